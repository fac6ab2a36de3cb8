CREATE TABLE `assemblies` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`entry_id` integer NOT NULL,
	`kind_id` integer,
	`name` text NOT NULL,
	`serial` text NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`kind_id`) REFERENCES `assembly_kinds`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE TABLE `assembly_kinds` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`name` text NOT NULL,
	`template` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `assembly_kinds_name_unique` ON `assembly_kinds` (`name`);--> statement-breakpoint
CREATE TABLE `class_knowledge` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`entry_id` integer NOT NULL,
	`part_class_id` integer NOT NULL,
	`wear_from_mm` real,
	`wear_to_mm` real,
	`hours_from` real,
	`hours_to` real,
	`source` text,
	`new_size_tol_mm` real,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`part_class_id`) REFERENCES `part_classes`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "class_knowledge_whole" CHECK((wear_from_mm IS NULL) = (wear_to_mm IS NULL) AND (wear_from_mm IS NULL) = (hours_from IS NULL) AND (wear_from_mm IS NULL) = (hours_to IS NULL))
) STRICT;
--> statement-breakpoint
CREATE INDEX `class_knowledge_class` ON `class_knowledge` (`part_class_id`);--> statement-breakpoint
CREATE TABLE `customers` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`name` text NOT NULL,
	`place` text NOT NULL,
	`address` text NOT NULL,
	`phone` text NOT NULL,
	`email` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `dial_readings` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`machine_id` integer NOT NULL,
	`taken_on` text NOT NULL,
	`kind` text NOT NULL,
	`dial_hours` real,
	`new_dial_hours` real,
	`error_hours` real,
	`hours_per_dial_hour` real,
	`in_day` integer DEFAULT 0 NOT NULL,
	`said_by` text NOT NULL,
	`parked` integer DEFAULT false NOT NULL,
	`question` text,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`machine_id`) REFERENCES `machines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `dial_readings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `dial_readings`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "dial_readings_kind" CHECK(kind IN ('reading', 'estimate', 'new-meter', 'rollover')),
	CONSTRAINT "dial_readings_dial" CHECK(dial_hours IS NOT NULL OR kind = 'new-meter'),
	CONSTRAINT "dial_readings_new_dial" CHECK((new_dial_hours IS NOT NULL) = (kind = 'new-meter'))
) STRICT;
--> statement-breakpoint
CREATE INDEX `dial_readings_machine` ON `dial_readings` (`machine_id`,`taken_on`);--> statement-breakpoint
CREATE INDEX `dial_readings_chain` ON `dial_readings` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `drafts` (
	`machine_id` integer PRIMARY KEY NOT NULL,
	`draft` text NOT NULL,
	`kept_at` text NOT NULL,
	FOREIGN KEY (`machine_id`) REFERENCES `machines`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE TABLE `entries` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`made_at` text NOT NULL,
	`made_by` text NOT NULL,
	`what` text NOT NULL,
	`undone_at` text
) STRICT;
--> statement-breakpoint
CREATE INDEX `entries_undone` ON `entries` (`undone_at`) WHERE undone_at IS NOT NULL;--> statement-breakpoint
CREATE TABLE `finding_closings` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`finding_id` integer NOT NULL,
	`closed_on` text NOT NULL,
	`outcome` text NOT NULL,
	`closed_by` text NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`finding_id`) REFERENCES `findings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `finding_closings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `finding_closings`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `finding_closings_finding` ON `finding_closings` (`finding_id`);--> statement-breakpoint
CREATE INDEX `finding_closings_chain` ON `finding_closings` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `findings` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`assembly_id` integer NOT NULL,
	`position_id` integer,
	`strip_down_id` integer,
	`taken_on` text NOT NULL,
	`kind` text NOT NULL,
	`severity` text NOT NULL,
	`note` text NOT NULL,
	`found_by` text NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`assembly_id`) REFERENCES `assemblies`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`position_id`) REFERENCES `positions`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`strip_down_id`) REFERENCES `strip_downs`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `findings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `findings`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "findings_kind" CHECK(kind IN ('crack', 'bent', 'broken', 'seized', 'missing', 'other')),
	CONSTRAINT "findings_severity" CHECK(severity IN ('watch', 'repair', 'do-not-use'))
) STRICT;
--> statement-breakpoint
CREATE INDEX `findings_assembly` ON `findings` (`assembly_id`);--> statement-breakpoint
CREATE INDEX `findings_chain` ON `findings` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `fitters` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`name` text NOT NULL,
	`active` integer NOT NULL
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `fitters_name_unique` ON `fitters` (`name`);--> statement-breakpoint
CREATE TABLE `gauges` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`name` text NOT NULL,
	`error_mm` real NOT NULL,
	`step_mm` real NOT NULL,
	`measures` text NOT NULL,
	`active` integer NOT NULL
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `gauges_name_unique` ON `gauges` (`name`);--> statement-breakpoint
CREATE TABLE `import_remarks` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`entry_id` integer NOT NULL,
	`file` text NOT NULL,
	`row` integer,
	`column` text,
	`value` text NOT NULL,
	`code` text NOT NULL,
	`facts` text NOT NULL,
	`size_id` integer,
	`dial_reading_id` integer,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`size_id`) REFERENCES `sizes`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`dial_reading_id`) REFERENCES `dial_readings`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE TABLE `learnings` (
	`key` text PRIMARY KEY NOT NULL,
	`fingerprint` text NOT NULL,
	`learning` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `machines` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`entry_id` integer NOT NULL,
	`name` text NOT NULL,
	`make` text NOT NULL,
	`model` text NOT NULL,
	`serial` text NOT NULL,
	`built_year` integer,
	`note` text NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `machines_name` ON `machines` (`name`);--> statement-breakpoint
CREATE TABLE `measuring_points` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`entry_id` integer NOT NULL,
	`position_id` integer NOT NULL,
	`name` text NOT NULL,
	`measures` text NOT NULL,
	`wears` text NOT NULL,
	`part_class_id` integer NOT NULL,
	`gauge_error_mm` real NOT NULL,
	`fitted_machine_hours` real,
	`stations` text NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`position_id`) REFERENCES `positions`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`part_class_id`) REFERENCES `part_classes`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "measuring_points_wears" CHECK(wears IN ('down', 'up')),
	CONSTRAINT "measuring_points_gauge_error" CHECK(gauge_error_mm > 0)
) STRICT;
--> statement-breakpoint
CREATE INDEX `measuring_points_position` ON `measuring_points` (`position_id`);--> statement-breakpoint
CREATE INDEX `measuring_points_class` ON `measuring_points` (`part_class_id`);--> statement-breakpoint
CREATE TABLE `meters` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`machine_id` integer NOT NULL,
	`digits` integer,
	`hours_before` real,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`machine_id`) REFERENCES `machines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `meters`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `meters`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `meters_machine` ON `meters` (`machine_id`);--> statement-breakpoint
CREATE INDEX `meters_chain` ON `meters` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `ownerships` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`machine_id` integer NOT NULL,
	`customer_id` integer NOT NULL,
	`from_on` text,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`machine_id`) REFERENCES `machines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`customer_id`) REFERENCES `customers`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `ownerships`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `ownerships`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `ownerships_machine` ON `ownerships` (`machine_id`);--> statement-breakpoint
CREATE INDEX `ownerships_chain` ON `ownerships` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `part_classes` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`name` text NOT NULL,
	`entry_id` integer NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `part_classes_name_unique` ON `part_classes` (`name`);--> statement-breakpoint
CREATE TABLE `point_limits` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`point_id` integer NOT NULL,
	`from_on` text,
	`new_size_mm` real NOT NULL,
	`new_size_tol_mm` real,
	`renew_at_mm` real,
	`reject_at_mm` real,
	`source` text,
	`entered_by` text NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`point_id`) REFERENCES `measuring_points`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `point_limits`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `point_limits`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `point_limits_point` ON `point_limits` (`point_id`);--> statement-breakpoint
CREATE INDEX `point_limits_chain` ON `point_limits` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `positions` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`entry_id` integer NOT NULL,
	`assembly_id` integer NOT NULL,
	`item` integer NOT NULL,
	`name` text NOT NULL,
	`safety` integer NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`assembly_id`) REFERENCES `assemblies`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `positions_assembly` ON `positions` (`assembly_id`);--> statement-breakpoint
CREATE TABLE `record_about` (
	`id` integer PRIMARY KEY NOT NULL,
	`identity` text NOT NULL,
	`is_demo` integer DEFAULT false NOT NULL,
	`started_at` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `renewals` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`strip_down_id` integer NOT NULL,
	`point_id` integer NOT NULL,
	`hours_known` integer NOT NULL,
	`size_mm` real,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`strip_down_id`) REFERENCES `strip_downs`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`point_id`) REFERENCES `measuring_points`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `renewals`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `renewals`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `renewals_point` ON `renewals` (`point_id`);--> statement-breakpoint
CREATE INDEX `renewals_chain` ON `renewals` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `shop_settings` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`entry_id` integer NOT NULL,
	`name` text NOT NULL,
	`head_lines` text NOT NULL,
	`phone` text NOT NULL,
	`email` text NOT NULL,
	`winter_from` text NOT NULL,
	`winter_to` text NOT NULL,
	`winter_hours_per_week` real NOT NULL,
	`decimal_mark` text NOT NULL,
	`season` text NOT NULL,
	`hours_per_year_default` real NOT NULL,
	`grease_and_watch` text NOT NULL,
	`theme` text NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE TABLE `sittings` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`assembly_id` integer NOT NULL,
	`machine_id` integer,
	`from_on` text,
	`off_dial_reading_id` integer,
	`on_dial_reading_id` integer,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`assembly_id`) REFERENCES `assemblies`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`machine_id`) REFERENCES `machines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`off_dial_reading_id`) REFERENCES `dial_readings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`on_dial_reading_id`) REFERENCES `dial_readings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `sittings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `sittings`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `sittings_assembly` ON `sittings` (`assembly_id`);--> statement-breakpoint
CREATE INDEX `sittings_machine` ON `sittings` (`machine_id`);--> statement-breakpoint
CREATE INDEX `sittings_chain` ON `sittings` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `sizes` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`strip_down_id` integer NOT NULL,
	`point_id` integer NOT NULL,
	`station` text NOT NULL,
	`event` text NOT NULL,
	`size_mm` real NOT NULL,
	`gauge_id` integer,
	`gauge_error_mm` real,
	`gauge_step_mm` real DEFAULT 0 NOT NULL,
	`parked` integer DEFAULT false NOT NULL,
	`question` text,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`strip_down_id`) REFERENCES `strip_downs`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`point_id`) REFERENCES `measuring_points`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`gauge_id`) REFERENCES `gauges`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `sizes`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `sizes`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "sizes_event" CHECK(event IN ('as-found', 'as-left'))
) STRICT;
--> statement-breakpoint
CREATE INDEX `sizes_point` ON `sizes` (`point_id`);--> statement-breakpoint
CREATE INDEX `sizes_strip_down` ON `sizes` (`strip_down_id`);--> statement-breakpoint
CREATE INDEX `sizes_chain` ON `sizes` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `slips` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`number` text NOT NULL,
	`machine_id` integer NOT NULL,
	`customer_id` integer,
	`made_on` text NOT NULL,
	`made_at` text NOT NULL,
	`made_by` text NOT NULL,
	`slip` text NOT NULL,
	FOREIGN KEY (`machine_id`) REFERENCES `machines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`customer_id`) REFERENCES `customers`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE UNIQUE INDEX `slips_number_unique` ON `slips` (`number`);--> statement-breakpoint
CREATE INDEX `slips_machine` ON `slips` (`machine_id`);--> statement-breakpoint
CREATE TABLE `strip_downs` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`machine_id` integer,
	`taken_on` text NOT NULL,
	`dial_hours` real,
	`dial_reading_id` integer,
	`fitter` text NOT NULL,
	`note` text NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`machine_id`) REFERENCES `machines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`dial_reading_id`) REFERENCES `dial_readings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `strip_downs`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `strip_downs`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `strip_downs_machine` ON `strip_downs` (`machine_id`,`taken_on`);--> statement-breakpoint
CREATE INDEX `strip_downs_chain` ON `strip_downs` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `work_shares` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`machine_id` integer NOT NULL,
	`from_on` text,
	`share` real NOT NULL,
	`work_type` text,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`machine_id`) REFERENCES `machines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `work_shares`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `work_shares`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "work_shares_share" CHECK(share > 0 AND share <= 1)
) STRICT;
--> statement-breakpoint
CREATE INDEX `work_shares_machine` ON `work_shares` (`machine_id`);--> statement-breakpoint
CREATE INDEX `work_shares_chain` ON `work_shares` (`chain_id`) WHERE chain_id IS NOT NULL;