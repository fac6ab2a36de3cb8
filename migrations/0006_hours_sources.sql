CREATE TABLE `hours_sources` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`machine_id` integer NOT NULL,
	`from_on` text NOT NULL,
	`kind` text NOT NULL,
	`puller_id` integer,
	`share` real,
	`hours_per_year` real,
	`error_share` real,
	`said_by` text NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`machine_id`) REFERENCES `machines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`puller_id`) REFERENCES `machines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `hours_sources`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `hours_sources`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "hours_sources_kind" CHECK(kind IN ('pulled', 'yearly', 'own')),
	CONSTRAINT "hours_sources_pulled" CHECK((puller_id IS NOT NULL) = (kind = 'pulled') AND (share IS NOT NULL) = (kind = 'pulled')),
	CONSTRAINT "hours_sources_yearly" CHECK((hours_per_year IS NOT NULL) = (kind = 'yearly')),
	CONSTRAINT "hours_sources_share" CHECK(share > 0 AND share <= 1),
	CONSTRAINT "hours_sources_hours" CHECK(hours_per_year > 0),
	CONSTRAINT "hours_sources_error" CHECK(error_share >= 0 AND error_share <= 2),
	CONSTRAINT "hours_sources_puller" CHECK(puller_id <> machine_id)
) STRICT;
--> statement-breakpoint
CREATE INDEX `hours_sources_machine` ON `hours_sources` (`machine_id`);--> statement-breakpoint
CREATE INDEX `hours_sources_chain` ON `hours_sources` (`chain_id`) WHERE chain_id IS NOT NULL;
--> statement-breakpoint
CREATE TRIGGER hours_sources_stay_as_written BEFORE UPDATE ON hours_sources BEGIN SELECT RAISE(ABORT, 'rows of hours_sources stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER hours_sources_stay BEFORE DELETE ON hours_sources BEGIN SELECT RAISE(ABORT, 'rows of hours_sources are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER hours_sources_keep_their_chain BEFORE INSERT ON hours_sources
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM hours_sources old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.machine_id IS NEW.machine_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of hours_sources supersedes one of its own chain'); END;
