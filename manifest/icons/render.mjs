// Makes the icons of the manifest from icon.svg: node manifest/icons/render.mjs
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { browserPath } from "../../.ci/prepare.mjs";

const at = (name) => fileURLToPath(new URL(name, import.meta.url));
const svg = readFileSync(at("icon.svg"), "utf8").replace(
  "<svg ",
  '<svg style="display:block;width:100vw;height:100vh" ',
);
const browser = await chromium.launch({ executablePath: await browserPath(), args: ["--no-sandbox"] });
for (const size of [16, 32, 64, 80]) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(`<body style="margin:0">${svg}`);
  await page.screenshot({ path: at(`icon-${size}.png`), omitBackground: true });
  await page.close();
}
await browser.close();
