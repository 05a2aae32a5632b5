/** What the writer leaves in a workbook so that it can be known and read back: both sides take it from here. */

/**
 * Among the keywords of the document; it stays there when another program saves the file. In the first workbooks all
 * inputs stood in the order of the model, the lengths of conductors too.
 */
export const MARK = 'coilfeed-workbook/2';
export const FIRST_MARK = 'coilfeed-workbook/1';

/** Begin of the defined names of the cells in which a person enters something. */
export const ENTRY = 'in_';
/** The same where they are entered in another unit than metric readers enter them. */
export const ENTRY_US = 'in_us_';

/** Defined name of the cells of the test card in which readings are entered. */
export const CARD = 'in_measured';

/** Defined name of the cells in which a person enters values and rules of their own. */
export const OWN_ROWS = 'own_rows';

/** Defined name of the cell above the column of labels beside the inputs. */
export const LABELS = 'input_labels';

/** Defined name of the cell above the column of notes beside the inputs. */
export const OWN_NOTES = 'own_notes';

/** Defined name of the cell that is 1 where the program computes the formulas of the workbook as it should. */
export const KNOWN_ANSWER = 'known_answer';

/** Begin of the defined names that tell a sheet as ours, whatever it is called now. */
export const PAGE = 'page_';

/** Defined name of the cells that hold the text of the design, a line in each row. */
export const DESIGN_TEXT = 'design_text';

/** A line goes on in the next column where a cell would be full; a cell holds 32 767 characters. */
export const LINE_PART = 32_000;
