CREATE TABLE `customer_details` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`entry_id` integer NOT NULL,
	`customer_id` integer NOT NULL,
	`name` text NOT NULL,
	`place` text NOT NULL,
	`address` text NOT NULL,
	`phone` text NOT NULL,
	`email` text NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`customer_id`) REFERENCES `customers`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `customer_details_customer` ON `customer_details` (`customer_id`);--> statement-breakpoint
CREATE TABLE `customer_erasures` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`entry_id` integer NOT NULL,
	`customer_id` integer NOT NULL,
	`texts` integer NOT NULL,
	`done` integer NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`customer_id`) REFERENCES `customers`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "customer_erasures_done" CHECK(done IN (0, 1))
) STRICT;
--> statement-breakpoint
CREATE INDEX `customer_erasures_customer` ON `customer_erasures` (`customer_id`);--> statement-breakpoint
CREATE INDEX `customer_erasures_running` ON `customer_erasures` (`done`) WHERE done = 0;--> statement-breakpoint
CREATE TABLE `customer_merges` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`customer_id` integer NOT NULL,
	`into_customer_id` integer NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`customer_id`) REFERENCES `customers`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`into_customer_id`) REFERENCES `customers`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `customer_merges`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `customer_merges`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "customer_merges_two" CHECK(customer_id <> into_customer_id)
) STRICT;
--> statement-breakpoint
CREATE INDEX `customer_merges_customer` ON `customer_merges` (`customer_id`);--> statement-breakpoint
CREATE INDEX `customer_merges_chain` ON `customer_merges` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `finding_declines` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`finding_id` integer NOT NULL,
	`said_on` text NOT NULL,
	`said_by` text NOT NULL,
	`words` text NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`finding_id`) REFERENCES `findings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `finding_declines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `finding_declines`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `finding_declines_finding` ON `finding_declines` (`finding_id`);--> statement-breakpoint
CREATE INDEX `finding_declines_chain` ON `finding_declines` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `finding_photos` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`finding_id` integer NOT NULL,
	`photo_id` integer NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`finding_id`) REFERENCES `findings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`photo_id`) REFERENCES `photos`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `finding_photos`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `finding_photos`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `finding_photos_finding` ON `finding_photos` (`finding_id`);--> statement-breakpoint
CREATE INDEX `finding_photos_photo` ON `finding_photos` (`photo_id`);--> statement-breakpoint
CREATE INDEX `finding_photos_chain` ON `finding_photos` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `photos` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`jpeg` blob NOT NULL,
	`width_px` integer NOT NULL,
	`height_px` integer NOT NULL,
	`kept_at` text NOT NULL,
	CONSTRAINT "photos_small" CHECK(length(jpeg) <= 300000),
	CONSTRAINT "photos_sides" CHECK(width_px BETWEEN 1 AND 1600 AND height_px BETWEEN 1 AND 1600)
) STRICT;
--> statement-breakpoint
-- Rows go on standing as written, but for texts that name a customer while that customer's data is being erased.
DROP TRIGGER ownerships_stay_as_written;
--> statement-breakpoint
CREATE TRIGGER ownerships_stay_as_written BEFORE UPDATE ON ownerships WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of ownerships stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
DROP TRIGGER meters_stay_as_written;
--> statement-breakpoint
CREATE TRIGGER meters_stay_as_written BEFORE UPDATE ON meters WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of meters stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
DROP TRIGGER dial_readings_stay_as_written;
--> statement-breakpoint
CREATE TRIGGER dial_readings_stay_as_written BEFORE UPDATE ON dial_readings WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of dial_readings stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
DROP TRIGGER work_shares_stay_as_written;
--> statement-breakpoint
CREATE TRIGGER work_shares_stay_as_written BEFORE UPDATE ON work_shares WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of work_shares stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
DROP TRIGGER sittings_stay_as_written;
--> statement-breakpoint
CREATE TRIGGER sittings_stay_as_written BEFORE UPDATE ON sittings WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of sittings stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
DROP TRIGGER point_limits_stay_as_written;
--> statement-breakpoint
CREATE TRIGGER point_limits_stay_as_written BEFORE UPDATE ON point_limits WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of point_limits stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
DROP TRIGGER strip_downs_stay_as_written;
--> statement-breakpoint
CREATE TRIGGER strip_downs_stay_as_written BEFORE UPDATE ON strip_downs WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of strip_downs stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
DROP TRIGGER sizes_stay_as_written;
--> statement-breakpoint
CREATE TRIGGER sizes_stay_as_written BEFORE UPDATE ON sizes WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of sizes stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
DROP TRIGGER renewals_stay_as_written;
--> statement-breakpoint
CREATE TRIGGER renewals_stay_as_written BEFORE UPDATE ON renewals WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of renewals stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
DROP TRIGGER findings_stay_as_written;
--> statement-breakpoint
CREATE TRIGGER findings_stay_as_written BEFORE UPDATE ON findings WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of findings stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
DROP TRIGGER finding_closings_stay_as_written;
--> statement-breakpoint
CREATE TRIGGER finding_closings_stay_as_written BEFORE UPDATE ON finding_closings WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of finding_closings stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
DROP TRIGGER positions_stay_as_written;
--> statement-breakpoint
CREATE TRIGGER positions_stay_as_written BEFORE UPDATE ON positions WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of positions stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
DROP TRIGGER measuring_points_stay_as_written;
--> statement-breakpoint
CREATE TRIGGER measuring_points_stay_as_written BEFORE UPDATE ON measuring_points WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of measuring_points stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
DROP TRIGGER assemblies_stay_as_written;
--> statement-breakpoint
CREATE TRIGGER assemblies_stay_as_written BEFORE UPDATE ON assemblies WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of assemblies stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
DROP TRIGGER class_knowledge_stay_as_written;
--> statement-breakpoint
CREATE TRIGGER class_knowledge_stay_as_written BEFORE UPDATE ON class_knowledge WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of class_knowledge stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
DROP TRIGGER shop_settings_stay_as_written;
--> statement-breakpoint
CREATE TRIGGER shop_settings_stay_as_written BEFORE UPDATE ON shop_settings WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of shop_settings stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
DROP TRIGGER import_remarks_stay_as_written;
--> statement-breakpoint
CREATE TRIGGER import_remarks_stay_as_written BEFORE UPDATE ON import_remarks WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of import_remarks stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER customers_stay_as_written BEFORE UPDATE ON customers WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of customers stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER customer_details_stay_as_written BEFORE UPDATE ON customer_details WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of customer_details stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER finding_photos_stay_as_written BEFORE UPDATE ON finding_photos WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of finding_photos stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER finding_declines_stay_as_written BEFORE UPDATE ON finding_declines WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of finding_declines stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER customer_merges_stay_as_written BEFORE UPDATE ON customer_merges WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of customer_merges stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER customer_details_stay BEFORE DELETE ON customer_details BEGIN SELECT RAISE(ABORT, 'rows of customer_details are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER finding_photos_stay BEFORE DELETE ON finding_photos BEGIN SELECT RAISE(ABORT, 'rows of finding_photos are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER finding_declines_stay BEFORE DELETE ON finding_declines BEGIN SELECT RAISE(ABORT, 'rows of finding_declines are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER customer_merges_stay BEFORE DELETE ON customer_merges BEGIN SELECT RAISE(ABORT, 'rows of customer_merges are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER customer_erasures_stay BEFORE DELETE ON customer_erasures BEGIN SELECT RAISE(ABORT, 'rows of customer_erasures are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER customer_erasures_stay_as_written BEFORE UPDATE ON customer_erasures WHEN OLD.done <> 0 BEGIN SELECT RAISE(ABORT, 'an erasure stays as made'); END;
--> statement-breakpoint
CREATE TRIGGER photos_stay_as_taken BEFORE UPDATE ON photos BEGIN SELECT RAISE(ABORT, 'photos stay as they were kept'); END;
--> statement-breakpoint
CREATE TRIGGER finding_photos_keep_their_chain BEFORE INSERT ON finding_photos
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM finding_photos old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.finding_id IS NEW.finding_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of finding_photos supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER finding_declines_keep_their_chain BEFORE INSERT ON finding_declines
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM finding_declines old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.finding_id IS NEW.finding_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of finding_declines supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER customer_merges_keep_their_chain BEFORE INSERT ON customer_merges
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM customer_merges old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.customer_id IS NEW.customer_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of customer_merges supersedes one of its own chain'); END;
