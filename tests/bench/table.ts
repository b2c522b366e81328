/** A table in Markdown, its columns padded to one width each; the first row is the header. */
export function table(rows: readonly (readonly (string | number)[])[]): string {
  const [header, ...body] = rows.map((row) => row.map(String));
  const widths = header.map((_, k) => Math.max(3, ...[header, ...body].map((r) => r[k].length)));
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell, k) => cell.padEnd(widths[k])).join(' | ')} |`;
  return [header, widths.map((width) => '-'.repeat(width)), ...body].map(line).join('\n');
}

/** The rows of a table as `table` writes it, wherever it stands in the text. */
export const tableRows = (text: string): string[][] =>
  text
    .split('\n')
    .filter((line) => line.startsWith('|') && !/^[|\s-]+$/.test(line))
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );

/** Three figures, without an exponent. */
export const short = (value: number): string =>
  value >= 100 ? value.toFixed(0) : value.toPrecision(3);
