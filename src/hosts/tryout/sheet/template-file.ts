import { download } from "./download.ts";
import type { TemplateReply } from "./template-worker.ts";

/** See `Host.templateFile`: calculated beside the workbook in sight, which is left alone. */
export async function saveTemplate(template: string): Promise<string> {
  const reply = await asked(template);
  if ("failed" in reply) throw new Error(reply.failed);
  const name = `${template}.xlsx`;
  download(name, reply.bytes);
  return `${name} is saved.`;
}

function asked(template: string): Promise<TemplateReply> {
  const worker = new Worker(/* webpackChunkName: "template-file" */ new URL("./template-worker.ts", import.meta.url));
  const reply = new Promise<TemplateReply>((done, fail) => {
    worker.onmessage = ({ data }: MessageEvent<TemplateReply>) => done(data);
    worker.onerror = () => fail(new Error("The file could not be made: load the page again."));
  });
  worker.postMessage(template);
  return reply.finally(() => worker.terminate());
}
