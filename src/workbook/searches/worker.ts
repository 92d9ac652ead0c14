/** Runs searches beside a page, one after the other. */
import { registry } from "../../functions/registry.ts";
import { READY, reply, type SearchRequest } from "./messages.ts";

addEventListener("message", async ({ data }: MessageEvent<SearchRequest>) => postMessage(await reply(data, registry)));
postMessage(READY);
