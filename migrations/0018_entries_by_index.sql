CREATE INDEX `dial_readings_entry` ON `dial_readings` (`entry_id`,`machine_id`,`taken_on`);--> statement-breakpoint
CREATE INDEX `kept_forecasts_entry` ON `kept_forecasts` (`entry_id`) WHERE entry_id IS NOT NULL;--> statement-breakpoint
CREATE INDEX `measuring_points_entry` ON `measuring_points` (`entry_id`);--> statement-breakpoint
CREATE INDEX `point_limits_entry` ON `point_limits` (`entry_id`);--> statement-breakpoint
CREATE INDEX `renewals_entry` ON `renewals` (`entry_id`,`strip_down_id`);--> statement-breakpoint
CREATE INDEX `sizes_entry` ON `sizes` (`entry_id`,`strip_down_id`);--> statement-breakpoint
CREATE INDEX `strip_downs_entry` ON `strip_downs` (`entry_id`);