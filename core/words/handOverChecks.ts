/** What is looked at before a machine leaves, as screens and papers say it; by the code of the check. */
export const handOverCheckNames: Readonly<Record<string, string>> = {
  'as-left-measured': 'Sizes as left measured and written down',
  'gaps-set': 'Gaps set',
  greased: 'Greased, clean grease seen',
  'latch-under-load': 'Latch tried under load',
  'driver-indicator': 'Indicator seen from the driver’s seat',
  'springs-and-keepers': 'Springs and keepers in place',
  'paint-marks': 'Paint marks put on',
  'old-parts-kept': 'Old parts tagged and kept',
};
