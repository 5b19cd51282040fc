// Bytes of an office's file as text, in whichever code it was saved; says so where that was a guess. Pure.

const MARKS = [["utf-8", [0xef, 0xbb, 0xbf]], ["utf-16le", [0xff, 0xfe]], ["utf-16be", [0xfe, 0xff]]];
const BOOKS = [[0x50, 0x4b, 0x03, 0x04], [0xd0, 0xcf, 0x11, 0xe0]];

const begins = (bytes, mark) => mark.every((byte, at) => bytes[at] === byte);

// {text, note} or {wrong}: the sentence that says what to do instead.
export function decode(bytes) {
  if (BOOKS.some((book) => begins(bytes, book))) {
    return { wrong: "This is a workbook, not CSV. Save the sheet as CSV (UTF-8) from the spreadsheet, then choose that file." };
  }
  const marked = MARKS.find(([, mark]) => begins(bytes, mark));
  if (marked) return { text: new TextDecoder(marked[0]).decode(bytes), note: marked[0] === "utf-8" ? "" : "The file was saved as UTF-16; it is given back in UTF-8." };
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes), note: "" };
  } catch {
    return {
      text: new TextDecoder("windows-1252").decode(bytes),
      note: "The file is not in UTF-8. It was read as Windows-1252, as older offices save it: look whether letters such as ä and signs such as ° are right. It is given back in UTF-8.",
    };
  }
}
