CREATE TABLE `sheet_mappings` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`noun` text NOT NULL,
	`heads` text NOT NULL,
	`mapping` text NOT NULL,
	`kept_at` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `sheet_mappings_heads` ON `sheet_mappings` (`noun`,`heads`);