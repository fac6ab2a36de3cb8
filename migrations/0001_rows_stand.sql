-- Rows that feed a forecast are never changed and never deleted, whichever program asks.
-- An entry may be undone and taken up again; nothing else of it changes.
CREATE TRIGGER ownerships_stay_as_written BEFORE UPDATE ON ownerships BEGIN SELECT RAISE(ABORT, 'rows of ownerships stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER ownerships_stay BEFORE DELETE ON ownerships BEGIN SELECT RAISE(ABORT, 'rows of ownerships are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER meters_stay_as_written BEFORE UPDATE ON meters BEGIN SELECT RAISE(ABORT, 'rows of meters stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER meters_stay BEFORE DELETE ON meters BEGIN SELECT RAISE(ABORT, 'rows of meters are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER dial_readings_stay_as_written BEFORE UPDATE ON dial_readings BEGIN SELECT RAISE(ABORT, 'rows of dial_readings stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER dial_readings_stay BEFORE DELETE ON dial_readings BEGIN SELECT RAISE(ABORT, 'rows of dial_readings are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER work_shares_stay_as_written BEFORE UPDATE ON work_shares BEGIN SELECT RAISE(ABORT, 'rows of work_shares stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER work_shares_stay BEFORE DELETE ON work_shares BEGIN SELECT RAISE(ABORT, 'rows of work_shares are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER sittings_stay_as_written BEFORE UPDATE ON sittings BEGIN SELECT RAISE(ABORT, 'rows of sittings stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER sittings_stay BEFORE DELETE ON sittings BEGIN SELECT RAISE(ABORT, 'rows of sittings are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER point_limits_stay_as_written BEFORE UPDATE ON point_limits BEGIN SELECT RAISE(ABORT, 'rows of point_limits stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER point_limits_stay BEFORE DELETE ON point_limits BEGIN SELECT RAISE(ABORT, 'rows of point_limits are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER strip_downs_stay_as_written BEFORE UPDATE ON strip_downs BEGIN SELECT RAISE(ABORT, 'rows of strip_downs stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER strip_downs_stay BEFORE DELETE ON strip_downs BEGIN SELECT RAISE(ABORT, 'rows of strip_downs are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER sizes_stay_as_written BEFORE UPDATE ON sizes BEGIN SELECT RAISE(ABORT, 'rows of sizes stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER sizes_stay BEFORE DELETE ON sizes BEGIN SELECT RAISE(ABORT, 'rows of sizes are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER renewals_stay_as_written BEFORE UPDATE ON renewals BEGIN SELECT RAISE(ABORT, 'rows of renewals stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER renewals_stay BEFORE DELETE ON renewals BEGIN SELECT RAISE(ABORT, 'rows of renewals are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER findings_stay_as_written BEFORE UPDATE ON findings BEGIN SELECT RAISE(ABORT, 'rows of findings stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER findings_stay BEFORE DELETE ON findings BEGIN SELECT RAISE(ABORT, 'rows of findings are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER finding_closings_stay_as_written BEFORE UPDATE ON finding_closings BEGIN SELECT RAISE(ABORT, 'rows of finding_closings stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER finding_closings_stay BEFORE DELETE ON finding_closings BEGIN SELECT RAISE(ABORT, 'rows of finding_closings are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER positions_stay_as_written BEFORE UPDATE ON positions BEGIN SELECT RAISE(ABORT, 'rows of positions stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER positions_stay BEFORE DELETE ON positions BEGIN SELECT RAISE(ABORT, 'rows of positions are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER measuring_points_stay_as_written BEFORE UPDATE ON measuring_points BEGIN SELECT RAISE(ABORT, 'rows of measuring_points stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER measuring_points_stay BEFORE DELETE ON measuring_points BEGIN SELECT RAISE(ABORT, 'rows of measuring_points are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER assemblies_stay_as_written BEFORE UPDATE ON assemblies BEGIN SELECT RAISE(ABORT, 'rows of assemblies stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER assemblies_stay BEFORE DELETE ON assemblies BEGIN SELECT RAISE(ABORT, 'rows of assemblies are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER class_knowledge_stay_as_written BEFORE UPDATE ON class_knowledge BEGIN SELECT RAISE(ABORT, 'rows of class_knowledge stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER class_knowledge_stay BEFORE DELETE ON class_knowledge BEGIN SELECT RAISE(ABORT, 'rows of class_knowledge are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER shop_settings_stay_as_written BEFORE UPDATE ON shop_settings BEGIN SELECT RAISE(ABORT, 'rows of shop_settings stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER shop_settings_stay BEFORE DELETE ON shop_settings BEGIN SELECT RAISE(ABORT, 'rows of shop_settings are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER import_remarks_stay_as_written BEFORE UPDATE ON import_remarks BEGIN SELECT RAISE(ABORT, 'rows of import_remarks stay as written: put in a row that supersedes'); END;
--> statement-breakpoint
CREATE TRIGGER import_remarks_stay BEFORE DELETE ON import_remarks BEGIN SELECT RAISE(ABORT, 'rows of import_remarks are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER part_classes_stay BEFORE DELETE ON part_classes BEGIN SELECT RAISE(ABORT, 'rows of part_classes are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER entries_stay_as_made BEFORE UPDATE OF id, made_at, made_by, what ON entries BEGIN SELECT RAISE(ABORT, 'an entry stays as made'); END;
--> statement-breakpoint
CREATE TRIGGER entries_stay BEFORE DELETE ON entries BEGIN SELECT RAISE(ABORT, 'entries are never deleted'); END;
--> statement-breakpoint
CREATE TRIGGER ownerships_keep_their_chain BEFORE INSERT ON ownerships
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM ownerships old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.machine_id IS NEW.machine_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of ownerships supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER meters_keep_their_chain BEFORE INSERT ON meters
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM meters old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.machine_id IS NEW.machine_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of meters supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER dial_readings_keep_their_chain BEFORE INSERT ON dial_readings
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM dial_readings old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.machine_id IS NEW.machine_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of dial_readings supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER work_shares_keep_their_chain BEFORE INSERT ON work_shares
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM work_shares old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.machine_id IS NEW.machine_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of work_shares supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER sittings_keep_their_chain BEFORE INSERT ON sittings
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM sittings old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.assembly_id IS NEW.assembly_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of sittings supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER point_limits_keep_their_chain BEFORE INSERT ON point_limits
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM point_limits old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.point_id IS NEW.point_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of point_limits supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER strip_downs_keep_their_chain BEFORE INSERT ON strip_downs
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM strip_downs old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.machine_id IS NEW.machine_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of strip_downs supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER sizes_keep_their_chain BEFORE INSERT ON sizes
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM sizes old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.point_id IS NEW.point_id AND old_row.strip_down_id IS NEW.strip_down_id AND old_row.station IS NEW.station AND old_row.event IS NEW.event
  ))
BEGIN SELECT RAISE(ABORT, 'a row of sizes supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER renewals_keep_their_chain BEFORE INSERT ON renewals
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM renewals old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.point_id IS NEW.point_id AND old_row.strip_down_id IS NEW.strip_down_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of renewals supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER findings_keep_their_chain BEFORE INSERT ON findings
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM findings old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.assembly_id IS NEW.assembly_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of findings supersedes one of its own chain'); END;
--> statement-breakpoint
CREATE TRIGGER finding_closings_keep_their_chain BEFORE INSERT ON finding_closings
WHEN (NEW.supersedes_id IS NULL) <> (NEW.chain_id IS NULL)
  OR (NEW.supersedes_id IS NOT NULL AND NOT EXISTS (
    SELECT 1 FROM finding_closings old_row
    WHERE old_row.id = NEW.supersedes_id AND COALESCE(old_row.chain_id, old_row.id) = NEW.chain_id AND old_row.finding_id IS NEW.finding_id
  ))
BEGIN SELECT RAISE(ABORT, 'a row of finding_closings supersedes one of its own chain'); END;
