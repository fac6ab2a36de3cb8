-- The winter plan: what it goes by, weeks with other hours, customers away, visits as they stand, and plans as they were proposed.
CREATE TABLE `customer_away` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`customer_id` integer NOT NULL,
	`from_on` text NOT NULL,
	`to_on` text NOT NULL,
	`note` text NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`customer_id`) REFERENCES `customers`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `customer_away`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `customer_away`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "customer_away_days" CHECK(from_on <= to_on)
) STRICT;
--> statement-breakpoint
CREATE INDEX `customer_away_customer` ON `customer_away` (`customer_id`);--> statement-breakpoint
CREATE INDEX `customer_away_chain` ON `customer_away` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `plan_settings` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`changed` text NOT NULL,
	`renewals` text NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `plan_settings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `plan_settings`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "plan_settings_json" CHECK(json_valid(changed) AND json_type(changed) = 'object' AND json_valid(renewals) AND json_type(renewals) = 'array')
) STRICT;
--> statement-breakpoint
CREATE INDEX `plan_settings_chain` ON `plan_settings` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `plan_visits` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`machine_id` integer NOT NULL,
	`winter_year` integer NOT NULL,
	`stands` text NOT NULL,
	`weeks` text NOT NULL,
	`promised_on` text,
	`work` text NOT NULL,
	`said_by` text NOT NULL,
	`note` text NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`machine_id`) REFERENCES `machines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `plan_visits`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `plan_visits`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "plan_visits_stands" CHECK(stands IN ('proposed', 'pinned', 'agreed', 'postponed', 'done')),
	CONSTRAINT "plan_visits_json" CHECK(json_valid(weeks) AND json_type(weeks) = 'array' AND json_valid(work) AND json_type(work) = 'object')
) STRICT;
--> statement-breakpoint
CREATE INDEX `plan_visits_machine` ON `plan_visits` (`machine_id`);--> statement-breakpoint
CREATE INDEX `plan_visits_chain` ON `plan_visits` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `plan_weeks` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`week_from` text NOT NULL,
	`bench_hours` real NOT NULL,
	`note` text NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `plan_weeks`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `plan_weeks`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "plan_weeks_hours" CHECK(bench_hours BETWEEN 0 AND 10000)
) STRICT;
--> statement-breakpoint
CREATE INDEX `plan_weeks_week` ON `plan_weeks` (`week_from`);--> statement-breakpoint
CREATE INDEX `plan_weeks_chain` ON `plan_weeks` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `plans` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`entry_id` integer NOT NULL,
	`made_on` text NOT NULL,
	`winter_year` integer NOT NULL,
	`facts` text NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "plans_json" CHECK(json_valid(facts) AND json_type(facts) = 'object')
) STRICT;
--> statement-breakpoint
CREATE TRIGGER plan_settings_stay_as_written BEFORE UPDATE ON plan_settings BEGIN SELECT RAISE(ABORT, 'rows of plan_settings stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER plan_settings_stay BEFORE DELETE ON plan_settings BEGIN SELECT RAISE(ABORT, 'rows of plan_settings are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER plan_settings_keep_their_chain BEFORE INSERT ON plan_settings
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM plan_settings old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of plan_settings supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER plan_weeks_stay_as_written BEFORE UPDATE ON plan_weeks BEGIN SELECT RAISE(ABORT, 'rows of plan_weeks stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER plan_weeks_stay BEFORE DELETE ON plan_weeks BEGIN SELECT RAISE(ABORT, 'rows of plan_weeks are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER plan_weeks_keep_their_chain BEFORE INSERT ON plan_weeks
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM plan_weeks old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.week_from IS NEW.week_from
  ))
BEGIN SELECT RAISE(ABORT, 'a row of plan_weeks supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER customer_away_stay_as_written BEFORE UPDATE ON customer_away BEGIN SELECT RAISE(ABORT, 'rows of customer_away stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER customer_away_stay BEFORE DELETE ON customer_away BEGIN SELECT RAISE(ABORT, 'rows of customer_away are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER customer_away_keep_their_chain BEFORE INSERT ON customer_away
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM customer_away old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.customer_id IS NEW.customer_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of customer_away supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER plan_visits_stay_as_written BEFORE UPDATE ON plan_visits BEGIN SELECT RAISE(ABORT, 'rows of plan_visits stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER plan_visits_stay BEFORE DELETE ON plan_visits BEGIN SELECT RAISE(ABORT, 'rows of plan_visits are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER plan_visits_keep_their_chain BEFORE INSERT ON plan_visits
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM plan_visits old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.machine_id IS NEW.machine_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of plan_visits supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER plans_stay_as_written BEFORE UPDATE ON plans BEGIN SELECT RAISE(ABORT, 'rows of plans stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER plans_stay BEFORE DELETE ON plans BEGIN SELECT RAISE(ABORT, 'rows of plans are never deleted'); END;
