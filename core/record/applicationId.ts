/** "HrWr", in the head of the file: tells a record from any other SQLite file. */
export const APPLICATION_ID = 0x48725772;
