-- What the bench says of worn holes, and the repairs chosen for them. One chain a position: whoever saves takes the last row's place.
CREATE TABLE `repair_choices` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position_id` integer NOT NULL,
	`chosen_on` text NOT NULL,
	`choice` text NOT NULL,
	`option` text NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`position_id`) REFERENCES `positions`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `repair_choices`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `repair_choices`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "repair_choices_json" CHECK(json_valid(option) AND json_type(option) = 'object')
) STRICT;
--> statement-breakpoint
CREATE INDEX `repair_choices_position` ON `repair_choices` (`position_id`);--> statement-breakpoint
CREATE INDEX `repair_choices_chain` ON `repair_choices` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `repair_facts` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position_id` integer NOT NULL,
	`facts` text NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`position_id`) REFERENCES `positions`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `repair_facts`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `repair_facts`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "repair_facts_json" CHECK(json_valid(facts) AND json_type(facts) = 'object')
) STRICT;
--> statement-breakpoint
CREATE INDEX `repair_facts_position` ON `repair_facts` (`position_id`);--> statement-breakpoint
CREATE INDEX `repair_facts_chain` ON `repair_facts` (`chain_id`) WHERE chain_id IS NOT NULL;
--> statement-breakpoint
CREATE TRIGGER repair_facts_stay_as_written BEFORE UPDATE ON repair_facts BEGIN SELECT RAISE(ABORT, 'rows of repair_facts stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER repair_facts_stay BEFORE DELETE ON repair_facts BEGIN SELECT RAISE(ABORT, 'rows of repair_facts are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER repair_facts_keep_their_chain BEFORE INSERT ON repair_facts
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM repair_facts old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.position_id IS NEW.position_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of repair_facts supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER repair_choices_stay_as_written BEFORE UPDATE ON repair_choices BEGIN SELECT RAISE(ABORT, 'rows of repair_choices stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER repair_choices_stay BEFORE DELETE ON repair_choices BEGIN SELECT RAISE(ABORT, 'rows of repair_choices are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER repair_choices_keep_their_chain BEFORE INSERT ON repair_choices
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM repair_choices old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.position_id IS NEW.position_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of repair_choices supersedes one of its own chain'); END;
