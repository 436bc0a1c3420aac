//! Figures come back bit for bit, and the SI columns say the same to within rounding.

use crate::samples::{at, new_id, reading, sheet, sheet_row, with_job};
use bench::glue::Batch;
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use sqlx::{AnyConnection, Connection, Row};
use trade::id::BatchId;
use trade::part::Part;
use trade::reading::What;

/// Typed figures (few decimals), computed ones (all bits), and the edges.
fn values(count: usize) -> Vec<f64> {
    let typed = (-1_000_000_i32..1_000_000, 0_i32..5).prop_map(|(n, d)| f64::from(n) / 10_f64.powi(d));
    let computed = any::<u64>().prop_map(f64::from_bits).prop_filter("a number", |v| v.is_finite());
    let edges = prop::sample::select(vec![0.0, -0.0, f64::MIN_POSITIVE, 5e-324, f64::MAX, f64::MIN, 0.1 + 0.2]);
    let strategy = prop_oneof![4 => typed, 4 => computed, 1 => edges];
    let mut runner = TestRunner::deterministic();
    (0..count).map(|_| strategy.new_tree(&mut runner).expect("a value").current()).collect()
}

on_both! {
    async fn every_bit_of_a_figure_comes_back(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        let measures = [What::HeadMass, What::ShaftLength, What::SwingWeight, What::Lie, What::Cpm, What::Done];
        for (i, value) in values(600).into_iter().enumerate() {
            let sent = reading(&job, 0, measures[i % measures.len()], value);
            tx.append_reading(&sent, None, None).await.expect("appended");
            let back = tx.reading(&sent.id).await.expect("read").expect("there");
            // Zero has no sign on a scale.
            assert_eq!(back.value.to_bits(), (value + 0.0).to_bits(), "{value:e} as {}", sent.what.key());
            let figure = Some(value);
            let part = Part {
                mass_g: figure, length_mm: figure, balance_point_mm: figure, cpm: figure, loft_deg: figure,
                lie_deg: figure,
                ..crate::samples::head(&format!("H-{i}"))
            };
            tx.insert_part(&part, at(1)).await.expect("saved");
            let back = tx.part(&part.id).await.expect("read").expect("there");
            let figures = [back.mass_g, back.length_mm, back.balance_point_mm, back.cpm, back.loft_deg, back.lie_deg];
            for figure in figures {
                assert_eq!(figure.map(f64::to_bits), Some(value.to_bits()), "{value:e}");
            }
            let mut document = sheet("Ada Fenwick", &["6"]);
            document.clubs[0].length_mm = value;
            let row = sheet_row(document);
            tx.insert_sheet(&row).await.expect("saved");
            let back = tx.sheet(&row.id).await.expect("read").expect("there");
            assert_eq!(back.sheet.clubs[0].length_mm.to_bits(), value.to_bits(), "{value:e} in a document");
        }
    }

    async fn si_columns_hold_si_values(db: &TestDb) {
        let job = with_job(db).await;
        let mut tx = db.write().await;
        // Each value with what a pocket calculator gives for it in SI.
        let cases = [
            (What::HeadMass, 261.3, "mass_kg", 0.2613),
            (What::ShaftLength, 933.6, "length_m", 0.9336),
            (What::SwingWeight, 32.4, "balance_points", 32.4),
            (What::Lie, 90.0, "angle_rad", std::f64::consts::FRAC_PI_2),
            (What::Cpm, 312.0, "frequency_hz", 5.2),
        ];
        let mut conn_rows = Vec::new();
        for (what, value, column, si) in cases {
            let sent = reading(&job, 0, what, value);
            tx.append_reading(&sent, None, None).await.expect("appended");
            conn_rows.push(("reading", sent.id.0, column, si));
        }
        let head = Part { length_mm: Some(88.0), balance_point_mm: None, lie_deg: Some(60.0), ..crate::samples::head("H6-1") };
        tx.insert_part(&head, at(1)).await.expect("saved");
        conn_rows.push(("part", head.id.0.clone(), "mass_kg", 0.2613));
        conn_rows.push(("part", head.id.0.clone(), "length_m", 0.088));
        conn_rows.push(("part", head.id.0, "lie_rad", std::f64::consts::FRAC_PI_3));
        let mut shaft = crate::samples::part("S-1", trade::model::PartKind::Shaft, "RUSH-110");
        tx.insert_part(&shaft, at(1)).await.expect("saved");
        shaft.cpm = Some(312.0);
        tx.update_part(&shaft, at(2)).await.expect("saved");
        conn_rows.push(("part", shaft.id.0, "frequency_hz", 5.2));
        let batch = Batch {
            id: BatchId(new_id()), number: 1, adhesive: "BOND-24".into(), lot: "7".into(), clubs: vec![],
            bead_share_percent: 5.0, room_c: 20.0, cold_reason: None, resin_g: 6.2, hardener_g: 6.1, beads_g: 0.6, mixed_at: at(1),
            by: "Wren".into(),
            taken_back: None,
        };
        tx.insert_batch(&batch, None).await.expect("saved");
        for (column, si) in [("bead_mass_fraction", 0.05), ("room_k", 293.15), ("resin_kg", 0.0062), ("beads_kg", 0.0006)] {
            conn_rows.push(("batch", batch.id.0.clone(), column, si));
        }
        tx.commit().await.expect("commit");
        let mut conn = AnyConnection::connect(&db.url).await.expect("a connection");
        for (table, id, column, si) in conn_rows {
            let sql = format!("SELECT {column} FROM {table} WHERE id = $1");
            let row = sqlx::query(sqlx::AssertSqlSafe(sql)).bind(id).fetch_one(&mut conn).await.expect("the row");
            let found: f64 = row.try_get(0).expect("a figure");
            // A few units in the last place: one division, in another order than by hand.
            assert!((found - si).abs() <= 4.0 * f64::EPSILON * si.abs(), "{table}.{column} is {found}, not {si}");
        }
        let row = sqlx::query("SELECT COUNT(*) FROM reading WHERE mass_kg IS NOT NULL").fetch_one(&mut conn).await;
        assert_eq!(row.expect("a row").try_get::<i64, _>(0).expect("a count"), 1, "only in the column of its unit");
    }
}
