CREATE TABLE `contact_terms` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`customer_id` integer NOT NULL,
	`no_contact` integer NOT NULL,
	`said_on` text NOT NULL,
	`words` text NOT NULL,
	`distance_km` real,
	`drive_minutes` real,
	`season_to` text,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`customer_id`) REFERENCES `customers`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `contact_terms`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `contact_terms`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "contact_terms_distance" CHECK(distance_km >= 0 AND drive_minutes >= 0)
) STRICT;
--> statement-breakpoint
CREATE INDEX `contact_terms_customer` ON `contact_terms` (`customer_id`);--> statement-breakpoint
CREATE INDEX `contact_terms_chain` ON `contact_terms` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `contacts` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`customer_id` integer NOT NULL,
	`machine_id` integer,
	`made_on` text NOT NULL,
	`way` text NOT NULL,
	`slip_id` integer,
	`said_by` text NOT NULL,
	`note` text NOT NULL,
	`answer` text,
	`answer_on` text,
	`call_back_on` text,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`customer_id`) REFERENCES `customers`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`machine_id`) REFERENCES `machines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`slip_id`) REFERENCES `slips`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `contacts`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `contacts`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "contacts_way" CHECK(way IN ('slip', 'email', 'message', 'phone', 'in-person')),
	CONSTRAINT "contacts_answer" CHECK(answer IN ('booked', 'later', 'declined', 'sold')),
	CONSTRAINT "contacts_answer_on" CHECK(answer_on IS NULL OR answer IN ('booked', 'later'))
) STRICT;
--> statement-breakpoint
CREATE INDEX `contacts_customer` ON `contacts` (`customer_id`);--> statement-breakpoint
CREATE INDEX `contacts_machine` ON `contacts` (`machine_id`);--> statement-breakpoint
CREATE INDEX `contacts_chain` ON `contacts` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `quiet_periods` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`customer_id` integer NOT NULL,
	`from_on` text NOT NULL,
	`to_on` text NOT NULL,
	`why` text NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`customer_id`) REFERENCES `customers`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `quiet_periods`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `quiet_periods`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "quiet_periods_order" CHECK(from_on <= to_on)
) STRICT;
--> statement-breakpoint
CREATE INDEX `quiet_periods_customer` ON `quiet_periods` (`customer_id`);--> statement-breakpoint
CREATE INDEX `quiet_periods_chain` ON `quiet_periods` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `recall_settings` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`entry_id` integer NOT NULL,
	`lead_days` integer NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "recall_settings_lead" CHECK(lead_days BETWEEN 0 AND 365)
) STRICT;
--> statement-breakpoint
CREATE TRIGGER contacts_stay_as_written BEFORE UPDATE ON contacts BEGIN SELECT RAISE(ABORT, 'rows of contacts stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER contacts_stay BEFORE DELETE ON contacts BEGIN SELECT RAISE(ABORT, 'rows of contacts are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER contacts_keep_their_chain BEFORE INSERT ON contacts
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM contacts old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.customer_id IS NEW.customer_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of contacts supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER contact_terms_stay_as_written BEFORE UPDATE ON contact_terms BEGIN SELECT RAISE(ABORT, 'rows of contact_terms stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER contact_terms_stay BEFORE DELETE ON contact_terms BEGIN SELECT RAISE(ABORT, 'rows of contact_terms are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER contact_terms_keep_their_chain BEFORE INSERT ON contact_terms
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM contact_terms old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.customer_id IS NEW.customer_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of contact_terms supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER quiet_periods_stay_as_written BEFORE UPDATE ON quiet_periods BEGIN SELECT RAISE(ABORT, 'rows of quiet_periods stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER quiet_periods_stay BEFORE DELETE ON quiet_periods BEGIN SELECT RAISE(ABORT, 'rows of quiet_periods are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER quiet_periods_keep_their_chain BEFORE INSERT ON quiet_periods
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM quiet_periods old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.customer_id IS NEW.customer_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of quiet_periods supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER recall_settings_stay_as_written BEFORE UPDATE ON recall_settings BEGIN SELECT RAISE(ABORT, 'rows of recall_settings stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER recall_settings_stay BEFORE DELETE ON recall_settings BEGIN SELECT RAISE(ABORT, 'rows of recall_settings are never deleted'); END;
