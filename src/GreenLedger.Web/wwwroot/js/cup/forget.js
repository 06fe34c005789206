import { forget } from "./kept.js";

await forget();
