// Options of the commands here: --name value, nothing else.

const words = process.argv.slice(2);
export const options = {};
for (let i = 0; i < words.length; i += 2) {
  if (!words[i].startsWith('--') || words[i + 1] === undefined) throw new Error(`expected --name value, found ${words[i]}`);
  options[words[i].slice(2)] = words[i + 1];
}
