// A ZIP archive, written and read by hand (APPNOTE 6.3: local headers, central directory, end
// record), so that the corpus shares no reader or writer with Gable. Fixed times; no ZIP64.

import { crc32 as nativeCrc, deflateRawSync, inflateRawSync } from 'node:zlib';

const table = Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});
function slowCrc(bytes) {
  let c = 0xffffffff;
  for (let i = 0; i < bytes.length; i++) c = table[(c ^ bytes[i]) & 0xff] ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
}
const crc = nativeCrc ?? slowCrc;

const u16 = (n) => [n & 255, (n >>> 8) & 255];
const u32 = (n) => [...u16(n & 0xffff), ...u16(n >>> 16)];
const FIXED_TIME = [...u16(0), ...u16((2020 - 1980) * 512 + 1 * 32 + 1)]; // 2020-01-01 00:00

/** Archive of [name, bytes or text] pairs, in order, deflated. */
export function zip(entries) {
  const out = [];
  const directory = [];
  let offset = 0;
  for (const [name, content] of entries) {
    const plain = Buffer.from(content);
    const packed = deflateRawSync(plain, { level: 9 });
    const title = Buffer.from(name, 'utf8');
    const common = [
      ...u16(20), ...u16(0x0800), ...u16(8), ...FIXED_TIME,
      ...u32(crc(plain)), ...u32(packed.length), ...u32(plain.length), ...u16(title.length), ...u16(0),
    ];
    const local = Buffer.concat([Buffer.from([0x50, 0x4b, 3, 4, ...common]), title, packed]);
    const central = [
      0x50, 0x4b, 1, 2, ...u16(20), ...common, ...u16(0), ...u16(0), ...u16(0), ...u32(0), ...u32(offset),
    ];
    directory.push(Buffer.from(central), title);
    out.push(local);
    offset += local.length;
  }
  const index = Buffer.concat(directory);
  const count = u16(entries.length);
  const end = [0x50, 0x4b, 5, 6, 0, 0, 0, 0, ...count, ...count, ...u32(index.length), ...u32(offset), 0, 0];
  return Buffer.concat([...out, index, Buffer.from(end)]);
}

/** Map from entry name to bytes; checks every sum and length. */
export function unzip(file) {
  let end = file.length - 22;
  while (end >= 0 && file.readUInt32LE(end) !== 0x06054b50) end--;
  if (end < 0) throw new Error('no ZIP end record');
  const entries = new Map();
  let at = file.readUInt32LE(end + 16);
  for (let k = file.readUInt16LE(end + 10); k > 0; k--) {
    const [method, sum, packed, size] = [
      file.readUInt16LE(at + 10), file.readUInt32LE(at + 16), file.readUInt32LE(at + 20), file.readUInt32LE(at + 24),
    ];
    const nameLength = file.readUInt16LE(at + 28);
    const name = file.toString('utf8', at + 46, at + 46 + nameLength);
    const local = file.readUInt32LE(at + 42);
    const start = local + 30 + file.readUInt16LE(local + 26) + file.readUInt16LE(local + 28);
    const raw = file.subarray(start, start + packed);
    const plain = method === 0 ? Buffer.from(raw) : inflateRawSync(raw);
    if (plain.length !== size || crc(plain) !== sum) throw new Error(`ZIP entry ${name} is damaged`);
    entries.set(name, plain);
    at += 46 + nameLength + file.readUInt16LE(at + 30) + file.readUInt16LE(at + 32);
  }
  return entries;
}
