// Just enough ZIP to take a package apart and put it together again with one part changed.
// Checksum: 4.4.7. Layout: PKWARE APPNOTE 6.3.x, sections 4.3.7, 4.3.12, 4.3.16. No ZIP64: fixtures are small.
import { deflateRawSync, inflateRawSync } from 'node:zlib';

const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;

/** The entries of a ZIP file in central order: [{name, data}]. */
export function unzip(bytes) {
  let end = bytes.length - 22;
  while (end >= 0 && bytes.readUInt32LE(end) !== END) end--;
  if (end < 0) throw new Error('no end of central directory');
  const entries = [];
  let at = bytes.readUInt32LE(end + 16);
  for (let left = bytes.readUInt16LE(end + 10); left > 0; left--) {
    if (bytes.readUInt32LE(at) !== CENTRAL) throw new Error(`no central record at ${at}`);
    const method = bytes.readUInt16LE(at + 10);
    const packed = bytes.readUInt32LE(at + 20);
    const nameLength = bytes.readUInt16LE(at + 28);
    const skip = bytes.readUInt16LE(at + 30) + bytes.readUInt16LE(at + 32);
    const name = bytes.toString('utf8', at + 46, at + 46 + nameLength);
    const local = bytes.readUInt32LE(at + 42);
    const start = local + 30 + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
    const raw = bytes.subarray(start, start + packed);
    if (method !== 0 && method !== 8) throw new Error(`${name}: method ${method}`);
    entries.push({ name, data: method === 0 ? raw : inflateRawSync(raw) });
    at += 46 + nameLength + skip;
  }
  return entries;
}

/** A ZIP file of the given entries, all deflated. */
export function zip(entries) {
  const chunks = [];
  const directory = [];
  let offset = 0;
  for (const { name, data } of entries) {
    const label = Buffer.from(name, 'utf8');
    const packed = deflateRawSync(data);
    const common = Buffer.alloc(26);
    common.writeUInt16LE(20, 0);
    common.writeUInt16LE(0x0800, 2);
    common.writeUInt16LE(8, 4);
    common.writeUInt16LE(0x21, 8);
    common.writeUInt32LE(crc32(data), 10);
    common.writeUInt32LE(packed.length, 14);
    common.writeUInt32LE(data.length, 18);
    common.writeUInt16LE(label.length, 22);
    chunks.push(word(LOCAL), common, label, packed);
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE(offset, 10);
    directory.push(word(CENTRAL), short(20), common, tail, label);
    offset += 30 + label.length + packed.length;
  }
  const central = Buffer.concat(directory);
  const end = Buffer.alloc(18);
  end.writeUInt16LE(entries.length, 4);
  end.writeUInt16LE(entries.length, 6);
  end.writeUInt32LE(central.length, 8);
  end.writeUInt32LE(offset, 12);
  return Buffer.concat([...chunks, central, word(END), end]);
}

function word(value) {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32LE(value, 0);
  return bytes;
}

function short(value) {
  const bytes = Buffer.alloc(2);
  bytes.writeUInt16LE(value, 0);
  return bytes;
}

const TABLE = Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value >>> 0;
});

function crc32(bytes) {
  let sum = 0xffffffff;
  for (const byte of bytes) sum = (sum >>> 8) ^ TABLE[(sum ^ byte) & 0xff];
  return (sum ^ 0xffffffff) >>> 0;
}
