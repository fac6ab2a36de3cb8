-- Forecasts as they stood: on a slip, in an agreed visit, or just before a strip-down opened the part. Scored later, never changed.
CREATE TABLE `kept_forecasts` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`why` text NOT NULL,
	`entry_id` integer,
	`slip_id` integer,
	`strip_down_id` integer,
	`point_id` integer NOT NULL,
	`part_ordinal` integer NOT NULL,
	`as_of` text NOT NULL,
	`known_at` text NOT NULL,
	`model_version` integer NOT NULL,
	`learned_from` text NOT NULL,
	`foretold` text NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`slip_id`) REFERENCES `slips`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`strip_down_id`) REFERENCES `strip_downs`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`point_id`) REFERENCES `measuring_points`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "kept_forecasts_why" CHECK(why IN ('slip', 'plan', 'strip-down')),
	CONSTRAINT "kept_forecasts_whose" CHECK((slip_id IS NOT NULL) = (why = 'slip') AND (strip_down_id IS NOT NULL) = (why = 'strip-down') AND (entry_id IS NULL) = (why = 'slip')),
	CONSTRAINT "kept_forecasts_json" CHECK(json_valid(foretold) AND json_type(foretold) = 'object')
) STRICT;
--> statement-breakpoint
CREATE INDEX `kept_forecasts_point` ON `kept_forecasts` (`point_id`,`as_of`);--> statement-breakpoint
CREATE INDEX `kept_forecasts_strip_down` ON `kept_forecasts` (`strip_down_id`) WHERE strip_down_id IS NOT NULL;
--> statement-breakpoint
CREATE TRIGGER kept_forecasts_stay_as_written BEFORE UPDATE ON kept_forecasts BEGIN SELECT RAISE(ABORT, 'rows of kept_forecasts stay as written'); END;
--> statement-breakpoint
CREATE TRIGGER kept_forecasts_stay BEFORE DELETE ON kept_forecasts BEGIN SELECT RAISE(ABORT, 'rows of kept_forecasts are never deleted'); END;
