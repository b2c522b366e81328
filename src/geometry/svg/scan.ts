import { SvgImportError, shortened } from './error.js';
import { MAX_CHARACTERS, MAX_DEPTH, MAX_ELEMENTS } from './limits.js';

/**
 * The XML parser used takes almost anything for XML: it reads into comments, closes what was never
 * opened and never ends where a tag is missing. So the text is first gone through once, from start
 * to end, after the rules of XML 1.0 (5th edition), and what is not sound is refused.
 */

/** A file that is safe to parse: no comments, instructions, document types or CDATA are left. */
export interface Scanned {
  readonly xml: string;
  /** The line of each element's start tag, in the file's order. */
  readonly lines: readonly number[];
}

const SVG_NAMESPACE = 'http://www.w3.org/2000/svg';
const NAME = /[^\s=<>"'/!?&]+/y;
const ATTRIBUTE = /\s+([^\s=<>"'/&]+)\s*=\s*("[^"<]*"|'[^'<]*')/y;
const TAG_END = /\s*(\/?)>/y;
const CLOSING_TAG = /\s*>/y;
const REFERENCE = /&(?!(?:amp|lt|gt|quot|apos|#\d{1,7}|#x[0-9a-fA-F]{1,6});)/;

/** @throws SvgImportError where the text is too long, too deep, not XML, or declares entities. */
export function scanXml(text: string): Scanned {
  if (text.length > MAX_CHARACTERS) {
    throw new SvgImportError(
      `The drawing's file has ${inMillions(text.length)} million characters; at most ` +
        `${inMillions(MAX_CHARACTERS)} million are read. Simplify its paths, or leave out pictures ` +
        'and data that are embedded in it.',
    );
  }
  return new Scanner(text.replace(/^\uFEFF/, '')).scan();
}

const inMillions = (count: number): string => (count / 1e6).toFixed(1);

class Scanner {
  private at = 0;
  private line = 1;
  private countedTo = 0;
  private readonly open: string[] = [];
  private readonly parts: string[] = [];
  private readonly lines: number[] = [];
  /** A prefix that stands for SVG's own namespace, with its colon. */
  private prefix = '';

  constructor(private readonly text: string) {}

  scan(): Scanned {
    while (this.at < this.text.length) {
      const next = this.text.indexOf('<', this.at);
      this.takeText(next < 0 ? this.text.length : next);
      if (next >= 0) this.takeMarkup();
    }
    if (this.lines.length === 0) throw this.fault('there is no element in it');
    if (this.open.length > 0) throw this.fault(`<${this.open.at(-1)}> is never closed`);
    return { xml: this.parts.join(''), lines: this.lines };
  }

  private takeText(end: number): void {
    const text = this.text.slice(this.at, end);
    if (this.open.length === 0 && text.trim() !== '') {
      throw this.fault(`"${shortened(text)}" stands outside of all elements`);
    }
    this.refuseReferences(text);
    this.parts.push(text);
    this.at = end;
  }

  private takeMarkup(): void {
    const startsWith = (mark: string): boolean => this.text.startsWith(mark, this.at);
    if (startsWith('<!--')) this.past('-->', 4, 'a comment');
    else if (startsWith('<![CDATA[')) this.takeCharacterData();
    else if (startsWith('<?')) this.takeInstruction();
    else if (startsWith('<!')) this.takeDocumentType();
    else if (startsWith('</')) this.takeClosingTag();
    else this.takeTag();
  }

  /** Steps past the next `end` and gives what lies before it. */
  private past(end: string, skip: number, what: string): string {
    const found = this.text.indexOf(end, this.at + skip);
    if (found < 0) throw this.fault(`${what} is never closed with "${end}"`);
    const inner = this.text.slice(this.at + skip, found);
    this.at = found + end.length;
    return inner;
  }

  private takeCharacterData(): void {
    if (this.open.length === 0) throw this.fault('CDATA stands outside of all elements');
    const data = this.past(']]>', 9, 'CDATA');
    this.parts.push(data.replaceAll('&', '&amp;').replaceAll('<', '&lt;'));
  }

  private takeInstruction(): void {
    const instruction = this.past('?>', 2, 'an instruction');
    if (!/^xml-stylesheet\s/.test(instruction)) return;
    throw this.refusal('asks for a style sheet in another file (xml-stylesheet)');
  }

  /** A document type names rules that nobody fetches; entities in it could do harm. */
  private takeDocumentType(): void {
    const end = /[[>]/g;
    end.lastIndex = this.at;
    const found = end.exec(this.text);
    if (found === null || !this.text.startsWith('<!DOCTYPE', this.at)) {
      throw this.fault('"<!" starts neither a comment nor a document type');
    }
    if (found[0] === '>') {
      this.at = end.lastIndex;
      return;
    }
    const subset = this.past(']', end.lastIndex - this.at, 'the document type');
    if (/<!ENTITY/i.test(subset)) {
      throw new SvgImportError(
        `The drawing declares entities in its document type (line ${this.lineNow()}), which can ` +
          'make a small file grow without end. Save it as plain SVG without a document type.',
      );
    }
    this.past('>', 0, 'the document type');
  }

  private takeClosingTag(): void {
    this.at += 2;
    const name = this.take(NAME)[0] ?? '';
    const opened = this.open.pop();
    if (name !== opened) {
      const instead = opened === undefined ? 'nothing is open' : `<${opened}> is still open`;
      throw this.fault(`</${name}> closes nothing: ${instead}`);
    }
    if (this.take(CLOSING_TAG).length === 0) throw this.fault(`</${name} has no ">"`);
    this.parts.push(`</${this.own(name)}>`);
  }

  private takeTag(): void {
    if (this.open.length === 0 && this.lines.length > 0) {
      throw this.fault('a second element stands after the first is closed');
    }
    this.lines.push(this.lineNow());
    if (this.lines.length > MAX_ELEMENTS) {
      throw new SvgImportError(
        `The drawing has more than ${MAX_ELEMENTS} elements (line ${this.lineNow()}). Join paths, or ` +
          'split the drawing.',
      );
    }
    this.at++;
    const [name] = this.take(NAME);
    if (name === undefined) throw this.fault('"<" starts no element (write &lt; in text)');
    const attributes = this.takeAttributes(name);
    const [whole, slash] = this.take(TAG_END);
    if (whole === undefined) throw this.fault(`the tag <${name}> is not written properly`);
    this.parts.push(`<${this.own(name)}${attributes}${slash}>`);
    if (slash === '/') return;
    this.open.push(name);
    if (this.open.length <= MAX_DEPTH) return;
    throw new SvgImportError(
      `The drawing nests elements more than ${MAX_DEPTH} deep (line ${this.lineNow()}). ` +
        'Ungroup it.',
    );
  }

  private takeAttributes(element: string): string {
    let attributes = '';
    const seen = new Set<string>();
    for (;;) {
      const [whole, name, value] = this.take(ATTRIBUTE);
      if (whole === undefined) return attributes;
      if (seen.has(name)) throw this.fault(`<${element}> has the attribute "${name}" twice`);
      seen.add(name);
      this.refuseReferences(value);
      if (this.open.length === 0 && value.slice(1, -1) === SVG_NAMESPACE) {
        if (name.startsWith('xmlns:')) this.prefix = `${name.slice(6)}:`;
      }
      attributes += ` ${name}=${value}`;
    }
  }

  /** The name without the prefix that stands for SVG itself. */
  private own(name: string): string {
    const isOwn = this.prefix !== '' && name.startsWith(this.prefix);
    return isOwn ? name.slice(this.prefix.length) : name;
  }

  private refuseReferences(text: string): void {
    const found = REFERENCE.exec(text);
    if (found === null) return;
    const name = shortened(text.slice(found.index, found.index + 20));
    throw this.fault(`"${name}" is no character reference (write &amp; for a bare &)`);
  }

  /** What a sticky pattern matches here, stepped over; empty where it does not match. */
  private take(pattern: RegExp): string[] {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text);
    if (found === null) return [];
    this.at = pattern.lastIndex;
    return [...found];
  }

  private lineNow(): number {
    for (;;) {
      const next = this.text.indexOf('\n', this.countedTo);
      if (next < 0 || next >= this.at) return this.line;
      this.line++;
      this.countedTo = next + 1;
    }
  }

  private fault(what: string): SvgImportError {
    return new SvgImportError(
      `The drawing is not sound XML: on line ${this.lineNow()}, ${what}. Save it again as SVG.`,
    );
  }

  private refusal(what: string): SvgImportError {
    return new SvgImportError(
      `The drawing ${what} on line ${this.lineNow()}; nothing outside of the file is fetched. ` +
        'Embed it, or take it out.',
    );
  }
}
