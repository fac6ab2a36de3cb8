-- What the shop has set otherwise in its forecasts, and its kinds of work. One chain: whoever saves takes the last row's place.
CREATE TABLE `forecast_settings` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`changed` text NOT NULL,
	`work_types` text NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `forecast_settings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `forecast_settings`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "forecast_settings_json" CHECK(json_valid(changed) AND json_type(changed) = 'object' AND json_valid(work_types) AND json_type(work_types) = 'array')
) STRICT;
--> statement-breakpoint
CREATE INDEX `forecast_settings_chain` ON `forecast_settings` (`chain_id`) WHERE chain_id IS NOT NULL;
--> statement-breakpoint
CREATE TRIGGER forecast_settings_stay_as_written BEFORE UPDATE ON forecast_settings BEGIN SELECT RAISE(ABORT, 'rows of forecast_settings stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER forecast_settings_stay BEFORE DELETE ON forecast_settings BEGIN SELECT RAISE(ABORT, 'rows of forecast_settings are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER forecast_settings_keep_their_chain BEFORE INSERT ON forecast_settings
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM forecast_settings old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of forecast_settings supersedes one of its own chain'); END;
