-- Derived, and free of triggers: what was kept stands on as older than what is entered, until it is forecast again.
CREATE TABLE `__new_machine_forecasts` (
	`machine_id` integer PRIMARY KEY NOT NULL,
	`as_of` text NOT NULL,
	`learned` text NOT NULL,
	`stale` integer NOT NULL,
	`list_group` text NOT NULL,
	`soonest_hours` real,
	`low_hours` real,
	`middle_hours` real,
	`plan_line_hours` real,
	`assemblies` text NOT NULL,
	`line` text NOT NULL,
	`due` text NOT NULL,
	FOREIGN KEY (`machine_id`) REFERENCES `machines`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
INSERT INTO `__new_machine_forecasts`
SELECT machine_id, as_of, learned, 1, coalesce(told ->> '$.group', 'no-forecast'),
	told ->> '$.first.decidingHoursLeft', told ->> '$.first.hoursLeft.low', told ->> '$.first.hoursLeft.middle', told ->> '$.planLineHours',
	coalesce((SELECT group_concat(value, char(10)) FROM json_each(told, '$.assemblies')), ''), line, 'null'
FROM (SELECT *, iif(json_valid(line), line, '{}') AS told FROM `machine_forecasts`);
--> statement-breakpoint
DROP TABLE `machine_forecasts`;
--> statement-breakpoint
ALTER TABLE `__new_machine_forecasts` RENAME TO `machine_forecasts`;
--> statement-breakpoint
CREATE INDEX `machine_forecasts_listed` ON `machine_forecasts` (`as_of`,`learned`,`stale`,`list_group`,`soonest_hours`,`low_hours`,`middle_hours`,`plan_line_hours`);
