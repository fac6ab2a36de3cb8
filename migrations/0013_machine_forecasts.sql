-- Derived, and free of triggers: kept forecasts are written over and dropped as need be.
CREATE TABLE `forecasts_marked` (
	`id` integer PRIMARY KEY NOT NULL,
	`revision` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `machine_forecasts` (
	`machine_id` integer PRIMARY KEY NOT NULL,
	`as_of` text NOT NULL,
	`learned` text NOT NULL,
	`stale` integer NOT NULL,
	`line` text NOT NULL,
	`points` text NOT NULL,
	FOREIGN KEY (`machine_id`) REFERENCES `machines`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
