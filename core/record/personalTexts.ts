/**
 * Texts of the record in which a person may be named, by table. Every other text is named too, with why nobody is in it: a
 * text that comes with a later schema must be put into one of the two (tests/record/customers.test.ts holds it).
 *
 * `json`: the texts within are looked through; what they are called stays.
 */
export const PERSONAL_TEXTS: Readonly<Record<string, readonly (string | { json: string })[]>> = {
  entries: ['made_by'],
  machines: ['name', 'note'],
  ownerships: ['reason'],
  meters: ['reason'],
  dial_readings: ['said_by', 'reason'],
  work_shares: ['work_type', 'reason'],
  assemblies: ['name'],
  sittings: ['reason'],
  position_sittings: ['reason'],
  hours_sources: ['said_by', 'reason'],
  forecast_settings: ['reason'],
  point_limits: ['source', 'entered_by', 'reason'],
  strip_downs: ['fitter', 'note', 'reason'],
  sizes: ['reason'],
  renewals: ['reason'],
  joints: ['reason'],
  shims: ['reason'],
  findings: ['note', 'found_by', 'reason'],
  finding_closings: ['outcome', 'closed_by', 'reason'],
  finding_photos: ['reason'],
  finding_declines: ['said_by', 'words', 'reason'],
  customer_merges: ['reason'],
  rebuilds: ['complaint', 'reason'],
  rebuild_lines: ['work', 'declined_words', 'reason'],
  rebuild_steps: ['said_by', { json: 'facts' }],
  drafts: [{ json: 'draft' }],
  slips: ['made_by', { json: 'slip' }],
  import_remarks: ['value', { json: 'facts' }],
};

/** Blanked as rows of the person, not looked through. */
export const CUSTOMER_TABLES = ['customers', 'customer_details'] as const;

/** Texts that name no customer: codes, days, names of things, and the shop's own people and words. */
export const NOT_PERSONAL: Readonly<Record<string, readonly string[]>> = {
  record_about: ['identity', 'started_at'],
  entries: ['made_at', 'what', 'undone_at'],
  shop_settings: [
    ...['name', 'head_lines', 'phone', 'email', 'winter_from', 'winter_to', 'decimal_mark', 'season'],
    ...['grease_and_watch', 'theme'],
  ],
  fitters: ['name'],
  gauges: ['name', 'measures'],
  assembly_kinds: ['name', 'template'],
  part_classes: ['name'],
  class_knowledge: ['source'],
  machines: ['make', 'model', 'serial'],
  ownerships: ['from_on'],
  dial_readings: ['taken_on', 'kind', 'question'],
  work_shares: ['from_on'],
  assemblies: ['serial'],
  sittings: ['from_on'],
  position_sittings: ['from_on'],
  hours_sources: ['from_on', 'kind'],
  forecast_settings: ['changed', 'work_types'],
  positions: ['name'],
  measuring_points: ['name', 'measures', 'wears', 'stations'],
  point_limits: ['from_on'],
  strip_downs: ['taken_on'],
  sizes: ['station', 'event', 'question'],
  renewals: ['kind', 'station', 'question'],
  joint_members: ['part'],
  findings: ['taken_on', 'kind', 'severity'],
  finding_closings: ['closed_on'],
  finding_declines: ['said_on'],
  photos: ['kept_at'],
  rebuilds: ['number', 'taken_in_on', 'wanted_by'],
  rebuild_lines: ['stands'],
  rebuild_steps: ['kind', 'said_on'],
  shop_rates: ['currency'],
  drafts: ['kept_at'],
  slips: ['number', 'made_on', 'made_at'],
  learnings: ['key', 'fingerprint', 'learning'],
  import_remarks: ['file', 'column', 'code'],
  sheet_mappings: ['noun', 'heads', 'mapping', 'kept_at'],
};
