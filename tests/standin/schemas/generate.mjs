// Writes params.json and objects.json beside this script: the JSON schemas that the stand-in checks requests and updates against.
//
//   node generate.mjs
//
// Needs Node 20 and npm; nothing of it is needed when the tests run. What is done, and nothing by hand:
//   1. npm installs the two packages below into a folder that is thrown away again.
//   2. ts-json-schema-generator turns the type definitions into one JSON schema each.
//   3. The schema is cut down: only the methods and objects named here and what they refer to; without the `toJSON` and
//      `toString` stand-ins for values, which exist for TypeScript callers and never on the wire; and of the descriptions only
//      those that state a length ("1-4096 characters", "1-64 bytes"), because the checker reads the lengths out of them.

import { execFileSync } from "node:child_process";
import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const TYPES = "@gramio/types@10.3.1";
const GENERATOR = "ts-json-schema-generator@2.4.0";

const METHODS = [
  "getUpdates", "setWebhook", "deleteWebhook", "sendMessage", "editMessageText", "editMessageCaption", "editMessageReplyMarkup",
  "deleteMessage", "answerCallbackQuery", "sendPhoto", "sendDocument", "sendVoice", "sendChatAction", "setMessageReaction",
  "setMyCommands", "getMyCommands", "getFile", "getChat",
];
const OBJECTS = ["TelegramUpdate", "TelegramMessage", "TelegramUser", "TelegramFile", "TelegramBotCommand", "TelegramWebhookInfo"];
const STATES_A_LENGTH = /\d+-\d+ (characters|bytes)/;

const here = dirname(fileURLToPath(import.meta.url));

function definitions(folder, file) {
  const program = join(folder, "node_modules/.bin/ts-json-schema-generator");
  const source = join(folder, "node_modules/@gramio/types/out", file);
  const text = execFileSync(program, ["--path", source, "--type", "*", "--no-type-check"], { maxBuffer: 1 << 28, cwd: folder });
  return JSON.parse(text).definitions;
}

function isShim(schema) {
  const names = Object.keys(schema.properties ?? {});
  return names.length === 1 && (names[0] === "toJSON" || names[0] === "toString");
}

function cut(schema) {
  if (Array.isArray(schema)) return schema.map(cut);
  if (schema === null || typeof schema !== "object") return schema;
  const kept = {};
  for (const [key, value] of Object.entries(schema)) {
    if (key === "description" && typeof value === "string") {
      if (STATES_A_LENGTH.test(value)) kept[key] = value;
    } else if (key === "anyOf") {
      const branches = value.filter((branch) => !isShim(branch)).map(cut);
      if (branches.length === 1) Object.assign(kept, branches[0]);
      else kept[key] = branches;
    } else if (key === "properties") {
      kept[key] = Object.fromEntries(Object.entries(value).map(([name, property]) => [name, cut(property)]));
    } else {
      kept[key] = cut(value);
    }
  }
  return kept;
}

function reachable(all, roots) {
  const kept = {};
  const waiting = [...roots];
  while (waiting.length) {
    const name = waiting.pop();
    if (name in kept) continue;
    if (!(name in all)) throw new Error(`no definition of ${name}`);
    kept[name] = cut(all[name]);
    for (const [, other] of JSON.stringify(kept[name]).matchAll(/"#\/definitions\/([^"]+)"/g)) waiting.push(decodeURIComponent(other));
  }
  return Object.fromEntries(Object.entries(kept).sort(([a], [b]) => (a < b ? -1 : 1)));
}

function write(name, all, roots) {
  const schema = { $schema: "http://json-schema.org/draft-07/schema#", $comment: `from ${TYPES} (MIT) by ${GENERATOR}, see generate.mjs`, definitions: reachable(all, roots) };
  writeFileSync(join(here, name), JSON.stringify(schema) + "\n");
}

const folder = mkdtempSync(join(tmpdir(), "schemas-"));
try {
  execFileSync("npm", ["install", "--silent", "--no-save", "--prefix", folder, TYPES, GENERATOR], { stdio: "inherit" });
  write("params.json", definitions(folder, "params.d.ts"), METHODS.map((name) => name[0].toUpperCase() + name.slice(1) + "Params"));
  write("objects.json", definitions(folder, "objects.d.ts"), OBJECTS);
  copyFileSync(join(folder, "node_modules/@gramio/types/LICENSE"), join(here, "LICENSE-gramio-types"));
} finally {
  rmSync(folder, { recursive: true });
}
