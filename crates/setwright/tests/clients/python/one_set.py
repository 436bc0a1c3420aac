"""One set through the API with the generated Python client: models and parts in, a sheet, its plan, one reading, advice.

    python one_set.py ADDRESS FOLDER

FOLDER holds models.json, parts.csv and sheet.json. The last line printed is a JSON object with what came of it.
"""

import json
import sys
from io import BytesIO
from pathlib import Path
from typing import TypeVar

import httpx
from setwright_client import Client
from setwright_client.api.bench import get_advice, keep_readings
from setwright_client.api.calculations import calculate_swing_weight
from setwright_client.api.jobs import get_job
from setwright_client.api.models import import_models, list_models
from setwright_client.api.parts import import_parts, list_parts
from setwright_client.api.plans import accept_plan, propose_plan
from setwright_client.api.sheets import add_sheet, approve_sheet
from setwright_client.models import (
    Accept,
    Approve,
    SwingWeightInput,
    Entry,
    HeadModel,
    ModelsUnderName,
    ModelToBe,
    NewReadings,
    PartKind,
    PartsImported,
    Problem,
    Propose,
    Sheet,
    What,
)
from setwright_client.types import File

T = TypeVar("T")


def good(answer: T | Problem | None) -> T:
    """The answer; a problem ends the program with what it says."""
    if isinstance(answer, Problem):
        sys.exit(f"{answer.status} {answer.title}: {answer.detail}")
    if answer is None:
        sys.exit("the answer is not one that the description promises")
    return answer


def main(address: str, folder: Path) -> None:
    client = Client(base_url=f"{address}/api/v1", timeout=httpx.Timeout(60.0))

    entries = json.loads((folder / "models.json").read_text())
    library = ModelsUnderName.from_dict({"models": entries})
    # Told apart by their kind: each is read as what it is.
    assert [model.kind for model in library.models if not isinstance(model, ModelToBe)] == [e["kind"] for e in entries]
    kept = good(import_models.sync(client=client, body=library))
    assert len(kept.kept) == len(entries) and not kept.bad, kept
    heads = good(list_models.sync(client=client, kind=PartKind.HEAD))
    assert all(isinstance(head, HeadModel) for head in heads), heads

    parts = File(payload=BytesIO((folder / "parts.csv").read_bytes()), file_name="parts.csv")
    stock = good(import_parts.sync(client=client, body=parts))
    assert isinstance(stock, PartsImported) and not stock.bad, stock
    page = good(list_parts.sync(client=client, kind=PartKind.SHAFT, limit=5))
    assert len(page.parts) == 5 < page.total, page

    sheet = good(add_sheet.sync(client=client, body=Sheet.from_dict(json.loads((folder / "sheet.json").read_text()))))
    job = good(approve_sheet.sync(sheet.id, client=client, body=Approve(by="Ada")))
    proposal = good(propose_plan.sync(job.number, client=client, body=Propose()))
    plan = good(accept_plan.sync(job.number, client=client, body=Accept(fingerprint=proposal.fingerprint, by="Ada")))

    entry = Entry(what=What.SWING_WEIGHT, typed="D8.5")
    reading = NewReadings(slot=4, step="dry", entries=[entry], by="Ada", request_key="python-1")
    answer = good(keep_readings.sync(job.number, client=client, body=reading))
    again = good(keep_readings.sync(job.number, client=client, body=reading))
    assert not answer.repeated and again.repeated, again
    advice = good(get_advice.sync(job.number, 4, client=client))
    seen = good(get_job.sync(job.number, client=client))

    refused = keep_readings.sync(99, client=client, body=reading)
    assert isinstance(refused, Problem) and refused.status == 404, refused
    swing_weight = good(calculate_swing_weight.sync(client=client, body=SwingWeightInput(total_mass_g=349.8, balance_point_mm=824.0)))

    told = {
        "models": len(kept.kept),
        "parts": stock.kept,
        "clubs": len(plan.clubs),
        "job": seen.job.number,
        "value": answer.readings[0].value,
        "remedies": [remedy.fact.words for remedy in advice.remedies],
        "swing_weight": swing_weight.letter,
    }
    print(json.dumps(told))


if __name__ == "__main__":
    main(sys.argv[1], Path(sys.argv[2]))
