CREATE TABLE `joint_members` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`entry_id` integer NOT NULL,
	`joint_id` integer NOT NULL,
	`point_id` integer NOT NULL,
	`part` text NOT NULL,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`joint_id`) REFERENCES `joints`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`point_id`) REFERENCES `measuring_points`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "joint_members_part" CHECK(part IN ('pin', 'bore'))
) STRICT;
--> statement-breakpoint
CREATE INDEX `joint_members_joint` ON `joint_members` (`joint_id`);--> statement-breakpoint
CREATE INDEX `joint_members_point` ON `joint_members` (`point_id`);--> statement-breakpoint
CREATE TABLE `joints` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`slack_point_id` integer NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`slack_point_id`) REFERENCES `measuring_points`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `joints`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `joints`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `joints_slack_point` ON `joints` (`slack_point_id`);--> statement-breakpoint
CREATE INDEX `joints_chain` ON `joints` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
CREATE TABLE `shims` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`strip_down_id` integer NOT NULL,
	`point_id` integer NOT NULL,
	`shim_mm` real NOT NULL,
	`entry_id` integer NOT NULL,
	`supersedes_id` integer,
	`chain_id` integer,
	`struck` integer DEFAULT false NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`strip_down_id`) REFERENCES `strip_downs`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`point_id`) REFERENCES `measuring_points`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`entry_id`) REFERENCES `entries`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supersedes_id`) REFERENCES `shims`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`chain_id`) REFERENCES `shims`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "shims_some" CHECK(shim_mm <> 0)
) STRICT;
--> statement-breakpoint
CREATE INDEX `shims_point` ON `shims` (`point_id`);--> statement-breakpoint
CREATE INDEX `shims_chain` ON `shims` (`chain_id`) WHERE chain_id IS NOT NULL;--> statement-breakpoint
ALTER TABLE `point_limits` ADD `renewal_id` integer REFERENCES renewals(id);--> statement-breakpoint
ALTER TABLE `positions` ADD `must_stay_standard` integer DEFAULT false NOT NULL;--> statement-breakpoint
ALTER TABLE `renewals` ADD `kind` text DEFAULT 'new-part' NOT NULL CHECK(kind IN ('new-part', 'bush', 'weld-and-bore', 'oversize', 'turned'));--> statement-breakpoint
ALTER TABLE `renewals` ADD `station` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `renewals` ADD `stamped` integer;--> statement-breakpoint
ALTER TABLE `renewals` ADD `parked` integer DEFAULT false NOT NULL;--> statement-breakpoint
ALTER TABLE `renewals` ADD `question` text;
--> statement-breakpoint
CREATE TRIGGER shims_stay_as_written BEFORE UPDATE ON shims WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of shims stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER shims_stay BEFORE DELETE ON shims BEGIN SELECT RAISE(ABORT, 'rows of shims are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER shims_keep_their_chain BEFORE INSERT ON shims
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM shims old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.point_id IS NEW.point_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of shims supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER joints_stay_as_written BEFORE UPDATE ON joints WHEN NOT EXISTS (SELECT 1 FROM customer_erasures WHERE done = 0) BEGIN SELECT RAISE(ABORT, 'rows of joints stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER joints_stay BEFORE DELETE ON joints BEGIN SELECT RAISE(ABORT, 'rows of joints are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER joints_keep_their_chain BEFORE INSERT ON joints
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM joints old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.slack_point_id IS NEW.slack_point_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of joints supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER joint_members_stay_as_written BEFORE UPDATE ON joint_members BEGIN SELECT RAISE(ABORT, 'rows of joint_members stay as written: lay out the joint again'); END;
--> statement-breakpoint
CREATE TRIGGER joint_members_stay BEFORE DELETE ON joint_members BEGIN SELECT RAISE(ABORT, 'rows of joint_members are never deleted'); END;
