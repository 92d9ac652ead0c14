import { READY, reply, type SearchRequest } from "../../../src/workbook/searches/messages.ts";
import { slow } from "./slow.ts";

addEventListener("message", ({ data }: MessageEvent<SearchRequest>) => {
  // Nothing is answered by a search that is to die.
  if (data.args[0] === 666) throw new Error("the worker dies");
  void reply(data, [slow]).then((found) => postMessage(found));
});
postMessage(READY);
