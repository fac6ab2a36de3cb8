CREATE TABLE `rebuild_lines` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`rebuild_id` integer NOT NULL,
	`position_id` integer,
	`work` text NOT NULL,
	`stands` text NOT NULL,
	`declined_words` text NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`rebuild_id`) REFERENCES `rebuilds`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`position_id`) REFERENCES `positions`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `rebuild_lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `rebuild_lines`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "rebuild_lines_stands" CHECK(stands IN ('proposed', 'agreed', 'declined'))
) STRICT;
--> statement-breakpoint
CREATE INDEX `rebuild_lines_rebuild` ON `rebuild_lines` (`rebuild_id`);--> statement-breakpoint
CREATE INDEX `rebuild_lines_chain` ON `rebuild_lines` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `rebuild_steps` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`entry_id` integer NOT NULL,
	`rebuild_id` integer NOT NULL,
	`line_id` integer,
	`kind` text NOT NULL,
	`said_on` text NOT NULL,
	`said_by` text NOT NULL,
	`facts` text NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`rebuild_id`) REFERENCES `rebuilds`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`) REFERENCES `rebuild_lines`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "rebuild_steps_kind" CHECK(kind IN ('quote', 'approval', 'bored', 'check', 'handed-over'))
) STRICT;
--> statement-breakpoint
CREATE INDEX `rebuild_steps_rebuild` ON `rebuild_steps` (`rebuild_id`);--> statement-breakpoint
CREATE TABLE `rebuilds` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`number` text NOT NULL,
	`machine_id` integer NOT NULL,
	`customer_id` integer,
	`taken_in_on` text NOT NULL,
	`wanted_by` text,
	`complaint` text NOT NULL,
	`dial_hours` real,
	`comeback_of_id` integer,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`machine_id`) REFERENCES `machines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`customer_id`) REFERENCES `customers`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`comeback_of_id`) REFERENCES `rebuilds`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `rebuilds`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `rebuilds`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `rebuilds_machine` ON `rebuilds` (`machine_id`);--> statement-breakpoint
CREATE INDEX `rebuilds_chain` ON `rebuilds` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `shop_rates` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`entry_id` integer NOT NULL,
	`currency` text NOT NULL,
	`hour_price` real NOT NULL,
	`strip_and_report_price` real NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE TRIGGER rebuilds_stay_as_written BEFORE UPDATE ON rebuilds WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of rebuilds stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER rebuilds_stay BEFORE DELETE ON rebuilds BEGIN SELECT RAISE(ABORT, 'rows of rebuilds are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER rebuild_lines_stay_as_written BEFORE UPDATE ON rebuild_lines WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of rebuild_lines stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER rebuild_lines_stay BEFORE DELETE ON rebuild_lines BEGIN SELECT RAISE(ABORT, 'rows of rebuild_lines are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER rebuild_steps_stay_as_written BEFORE UPDATE ON rebuild_steps WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of rebuild_steps stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER rebuild_steps_stay BEFORE DELETE ON rebuild_steps BEGIN SELECT RAISE(ABORT, 'rows of rebuild_steps are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER shop_rates_stay_as_written BEFORE UPDATE ON shop_rates WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of shop_rates stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER shop_rates_stay BEFORE DELETE ON shop_rates BEGIN SELECT RAISE(ABORT, 'rows of shop_rates are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER rebuilds_keep_their_chain BEFORE INSERT ON rebuilds
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (SELECT 1 FROM rebuilds old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.machine_id IS NEW.machine_id))
BEGIN SELECT RAISE(ABORT, 'a row of rebuilds supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER rebuild_lines_keep_their_chain BEFORE INSERT ON rebuild_lines
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (SELECT 1 FROM rebuild_lines old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.rebuild_id IS NEW.rebuild_id))
BEGIN SELECT RAISE(ABORT, 'a row of rebuild_lines supersedes one of its own chain'); END;
