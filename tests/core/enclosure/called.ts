export { cautions, says, value, working } from "../called.ts";
