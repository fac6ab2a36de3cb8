-- Pictures and whereabouts of a job's machine, the lengths of slides, and the shop's own figures of repair.
CREATE TABLE `rebuild_photos` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`rebuild_id` integer NOT NULL,
	`photo_id` integer NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`rebuild_id`) REFERENCES `rebuilds`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`photo_id`) REFERENCES `photos`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `rebuild_photos`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `rebuild_photos`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `rebuild_photos_rebuild` ON `rebuild_photos` (`rebuild_id`);--> statement-breakpoint
CREATE INDEX `rebuild_photos_photo` ON `rebuild_photos` (`photo_id`);--> statement-breakpoint
CREATE INDEX `rebuild_photos_chain` ON `rebuild_photos` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `repair_figures` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`entry_id` integer NOT NULL,
	`figures` text NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "repair_figures_json" CHECK(json_valid(figures) AND json_type(figures) = 'object')
) STRICT;
--> statement-breakpoint
CREATE TABLE `slide_facts` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`assembly_id` integer NOT NULL,
	`facts` text NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`assembly_id`) REFERENCES `assemblies`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `slide_facts`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `slide_facts`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "slide_facts_json" CHECK(json_valid(facts) AND json_type(facts) = 'object')
) STRICT;
--> statement-breakpoint
CREATE INDEX `slide_facts_assembly` ON `slide_facts` (`assembly_id`);--> statement-breakpoint
CREATE INDEX `slide_facts_chain` ON `slide_facts` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
ALTER TABLE `rebuilds` ADD `whereabouts` text DEFAULT 'not-said' NOT NULL;--> statement-breakpoint
ALTER TABLE `rebuilds` ADD `whereabouts_note` text DEFAULT '' NOT NULL;
--> statement-breakpoint
CREATE TRIGGER rebuild_photos_stay_as_written BEFORE UPDATE ON rebuild_photos BEGIN SELECT RAISE(ABORT, 'rows of rebuild_photos stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER rebuild_photos_stay BEFORE DELETE ON rebuild_photos BEGIN SELECT RAISE(ABORT, 'rows of rebuild_photos are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER rebuild_photos_keep_their_chain BEFORE INSERT ON rebuild_photos
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM rebuild_photos old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.rebuild_id IS NEW.rebuild_id AND old_row.photo_id IS NEW.photo_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of rebuild_photos supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER slide_facts_stay_as_written BEFORE UPDATE ON slide_facts BEGIN SELECT RAISE(ABORT, 'rows of slide_facts stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER slide_facts_stay BEFORE DELETE ON slide_facts BEGIN SELECT RAISE(ABORT, 'rows of slide_facts are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER slide_facts_keep_their_chain BEFORE INSERT ON slide_facts
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM slide_facts old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.assembly_id IS NEW.assembly_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of slide_facts supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER repair_figures_stay_as_written BEFORE UPDATE ON repair_figures BEGIN SELECT RAISE(ABORT, 'rows of repair_figures stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER repair_figures_stay BEFORE DELETE ON repair_figures BEGIN SELECT RAISE(ABORT, 'rows of repair_figures are never deleted'); END;
