// One set through the API with the generated TypeScript client: models and parts in, a sheet, its plan, one reading,
// advice.
//
//     node one-set.ts ADDRESS FOLDER
//
// FOLDER holds models.json, parts.csv and sheet.json. The last line printed is a JSON object with what came of it.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import createClient from "openapi-fetch";
import type { components, paths } from "./schema.js";

type Schemas = components["schemas"];

const [address, folder] = process.argv.slice(2);
if (address === undefined || folder === undefined) throw new Error("give the address and the folder");
const text = (name: string) => readFileSync(join(folder, name), "utf8");

const client = createClient<paths>({ baseUrl: `${address}/api/v1` });

/** The answer; a problem ends the program with what it says. */
function good<T>(answer: { data?: T; error?: Schemas["Problem"] }): T {
    if (answer.error !== undefined) throw new Error(`${answer.error.status} ${answer.error.detail}`);
    if (answer.data === undefined) throw new Error("the answer is not one that the description promises");
    return answer.data;
}

const models = JSON.parse(text("models.json")) as Schemas["Model"][];
const kept = good(await client.POST("/models/import", { body: models }));
if (kept.kept.length !== models.length || kept.bad.length > 0) throw new Error(JSON.stringify(kept));
const grips = good(await client.GET("/models", { params: { query: { kind: "grip" } } }));
// Told apart by its kind: a grip has a cap.
for (const grip of grips) if (grip.kind !== "grip" || !(grip.cap_mm > 0)) throw new Error(JSON.stringify(grip));

const stock = good(
    await client.POST("/parts/import", {
        body: text("parts.csv"),
        bodySerializer: (body) => body,
        headers: { "Content-Type": "text/csv" },
    }),
);
if (!("kept" in stock) || stock.bad.length > 0) throw new Error(JSON.stringify(stock));
const page = good(await client.GET("/parts", { params: { query: { kind: "shaft", limit: 5 } } }));
if (page.parts.length !== 5 || page.total <= 5) throw new Error(JSON.stringify(page));

const sheet = good(await client.POST("/sheets", { body: JSON.parse(text("sheet.json")) as Schemas["Sheet"] }));
const job = good(
    await client.POST("/sheets/{id}/approve", { params: { path: { id: sheet.id } }, body: { by: "Ada" } }),
);
const path = { number: job.number };
const proposal = good(await client.POST("/jobs/{number}/plan/propose", { params: { path }, body: {} }));
const plan = good(
    await client.POST("/jobs/{number}/plan", {
        params: { path },
        body: { fingerprint: proposal.fingerprint, by: "Ada" },
    }),
);

const reading: Schemas["NewReadings"] = {
    slot: 4,
    step: "dry",
    entries: [{ what: "swing_weight", typed: "D8.5" }],
    by: "Ada",
    request_key: "typescript-1",
};
const answer = good(await client.POST("/jobs/{number}/readings", { params: { path }, body: reading }));
const again = good(await client.POST("/jobs/{number}/readings", { params: { path }, body: reading }));
if (answer.repeated || !again.repeated) throw new Error("the same key twice must be kept once");
const advice = good(
    await client.GET("/jobs/{number}/clubs/{slot}/advice", { params: { path: { ...path, slot: 4 } } }),
);
const seen = good(await client.GET("/jobs/{number}", { params: { path } }));

const refused = await client.POST("/jobs/{number}/readings", { params: { path: { number: 99 } }, body: reading });
if (refused.error?.status !== 404) throw new Error(JSON.stringify(refused.error));
const swing_weight = good(
    await client.POST("/calc/swing-weight", { body: { total_mass_g: 349.8, balance_point_mm: 824.0 } }),
);

console.log(
    JSON.stringify({
        models: kept.kept.length,
        parts: stock.kept,
        clubs: plan.clubs.length,
        job: seen.job.number,
        value: answer.readings[0]?.value,
        remedies: advice.remedies.map((remedy) => remedy.fact.words),
        swing_weight: swing_weight.letter,
    }),
);
