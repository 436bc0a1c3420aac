//! Goal: the sheet that a player keeps says what the record says, in the fewest figures. Method: the invented shop's finished
//! set and its set at the bench, by the API and as pages.

use crate::demo_past::{demo, list};
use serde_json::{Value, json};

#[tokio::test]
async fn asked_and_built_are_those_of_the_record() {
    let bench = demo().await;
    let (sheet, record) = (bench.get("/jobs/3/player-sheet").await, bench.get("/jobs/3/record").await);
    assert_eq!((&sheet["shop"], &sheet["player"]), (&record["shop"], &record["player"]));
    assert_eq!(
        list(&sheet, "columns"),
        &["finished_length", "swing_weight", "cpm", "loft", "lie", "total_mass"].map(Value::from)
    );
    let (clubs, recorded) = (list(&sheet, "clubs"), list(&record, "clubs"));
    assert_eq!(clubs.len(), recorded.len());
    let mut built = 0;
    for (club, recorded) in clubs.iter().zip(recorded) {
        assert_eq!(club["number"], recorded["target"]["number"]);
        for figure in list(club, "figures") {
            let of_record = |line: &&Value| line["what"] == figure["what"] && line["within_set"] != json!(true);
            let line = list(recorded, "lines").iter().find(of_record).expect("a line");
            assert_eq!((&figure["asked"], &figure["built"]), (&line["target"], &line["built"]), "{figure}");
            built += usize::from(figure["built"].is_number());
        }
    }
    assert_eq!(built, 8 * 6, "a finished set was read whole");
    // What was felt is the reference club; who built it read most of it.
    let felt = list(&sheet["felt"], "figures").iter().find(|figure| figure["what"] == "swing_weight").expect("felt");
    assert_eq!(felt["value"], record["reference"]["swing_weight_points"]);
    assert!(list(&record, "hands").contains(&sheet["builder"]), "{}", sheet["builder"]);
    assert_eq!(sheet["made_of"][0], json!({ "kind": "head", "models": ["Siskin"] }));
}

#[tokio::test]
async fn the_page_shows_the_sheet_and_says_what_is_not_handed_over() {
    let bench = demo().await;
    let page = bench.page("/records/3/player").await.text;
    for part in
        ["Hesper Wainfleet", "finished", "Heads Siskin", "asked", "built", "this we promise", "Felt: the 6-iron"]
    {
        assert!(page.contains(part), "{part}");
    }
    // Nothing about chances: that is the record's.
    assert!(!page.contains("chance"), "a chance on the player's sheet");
    assert_eq!(page.matches("class=\"drawn-club\"").count(), 8);
    assert!(!page.contains("not handed over yet"));
    assert!(bench.page("/records/1/player").await.text.contains("not handed over yet"));
    assert!(bench.page("/records/3").await.text.contains("/records/3/player"));
}
