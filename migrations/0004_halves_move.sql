-- A group of positions (a hitch's carrier with its strips) moves by itself, from one assembly to another or to the shelf.
CREATE TABLE `position_sittings` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position_id` integer NOT NULL,
	`assembly_id` integer,
	`from_on` text NOT NULL,
	`off_dial_reading_id` integer,
	`on_dial_reading_id` integer,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`position_id`) REFERENCES `positions`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`assembly_id`) REFERENCES `assemblies`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`off_dial_reading_id`) REFERENCES `dial_readings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`on_dial_reading_id`) REFERENCES `dial_readings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `position_sittings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `position_sittings`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `position_sittings_position` ON `position_sittings` (`position_id`);--> statement-breakpoint
CREATE INDEX `position_sittings_assembly` ON `position_sittings` (`assembly_id`);--> statement-breakpoint
CREATE INDEX `position_sittings_chain` ON `position_sittings` (`chain_id`) WHERE chain_id IS NOT NULL;
--> statement-breakpoint
CREATE TRIGGER position_sittings_stay_as_written BEFORE UPDATE ON position_sittings BEGIN SELECT RAISE(ABORT, 'rows of position_sittings stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER position_sittings_stay BEFORE DELETE ON position_sittings BEGIN SELECT RAISE(ABORT, 'rows of position_sittings are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER position_sittings_keep_their_chain BEFORE INSERT ON position_sittings
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM position_sittings old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.position_id IS NEW.position_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of position_sittings supersedes one of its own chain'); END;
--> statement-breakpoint
-- The pick-up hitch a record starts with comes apart in two; kinds of the shop's own are named apart on the Shop screen.
UPDATE assembly_kinds SET template = json_set(template, '$.positions', json((
  SELECT json_group_array(json_set(at.value, '$.group', CASE
    WHEN json_extract(at.value, '$.name') IN ('Ram pin, cap end', 'Latch pin, left', 'Latch pin, right') THEN 'frame'
    WHEN json_extract(at.value, '$.name') IN ('Slide strip, top front', 'Slide strip, top rear', 'Slide strip, bottom front',
      'Slide strip, bottom rear', 'Side pad, left', 'Side pad, right', 'Ram pin, rod end', 'Hook-frame pivot, left',
      'Hook-frame pivot, right', 'Hook', 'Keeper') THEN 'carrier'
    END))
  FROM json_each(template, '$.positions') at)))
WHERE name = 'Telescopic pick-up hitch' AND json_valid(template) AND json_array_length(template, '$.positions') > 0;
