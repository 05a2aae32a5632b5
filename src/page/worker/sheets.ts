/** The spreadsheet engine as a part of its own: only the worker that writes a workbook loads it. */
export { DetailedCellError, HyperFormula } from 'hyperformula';
