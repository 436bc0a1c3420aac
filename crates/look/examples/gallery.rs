//! Writes the pages that show the look into a folder, with the style sheet and scripts beside them:
//! `cargo run -p look --example gallery -- FOLDER [light|dark]`.

use std::path::Path;
use std::{env, fs, io};

use quantity::Units;
use words::Words;

use look::assets::{asset, asset_url};
use look::{Clock, FooterLink, Nav, PageFrame, Tablet, gallery, page};

fn main() -> io::Result<()> {
    let Some(folder) = env::args().nth(1) else {
        return Err(io::Error::other("name the folder to write to, such as target/gallery"));
    };
    let theme = match env::args().nth(2).as_deref() {
        None => None,
        Some("light") => Some("light"),
        Some("dark") => Some("dark"),
        Some(other) => return Err(io::Error::other(format!("`{other}` is no theme; write light or dark"))),
    };
    let w = Words::english(Units::default());
    let folder = Path::new(&folder);
    for name in [
        "setwright.css",
        "bench.css",
        "calc.css",
        "print.css",
        "bench.js",
        "clocks.js",
        "keys.js",
        "keep.js",
        "live.js",
        "mark.svg",
    ] {
        let place = folder.join(asset_url(name).trim_start_matches('/'));
        fs::create_dir_all(place.parent().unwrap_or(folder))?;
        let file = asset(name).ok_or_else(|| io::Error::other(format!("{name} is not carried")))?;
        fs::write(place, file.content)?;
    }
    let bench = PageFrame {
        title: "Bench".to_owned(),
        active: Nav::Bench,
        crumb: "Job 42 · 8 irons · tip weight in, before gluing".to_owned(),
        clocks: vec![Clock {
            label: "Glue".to_owned(),
            until: "".to_owned(),
            text: "14:20".to_owned(),
            done: "14:20".to_owned(),
            href: "/glue".to_owned(),
        }],
        at_bench: true,
        tablet: Tablet { theme, ..Tablet::default() },
        ..PageFrame::default()
    };
    let pages = [
        ("bench.html", PageFrame { body: gallery::bench_example(&w), ..bench.clone() }),
        ("grid.html", PageFrame { body: gallery::grid_example(&w), ..bench.clone() }),
        ("card.html", PageFrame { title: "Job cards".to_owned(), body: gallery::card_example(&w), ..bench.clone() }),
        (
            "index.html",
            PageFrame {
                title: "The look".to_owned(),
                active: Nav::Elsewhere,
                crumb: "Colours, blocks and pictures".to_owned(),
                at_bench: false,
                sheets: &["bench.css", "calc.css"],
                body: gallery::gallery(&w),
                footer: vec![FooterLink { href: "#".to_owned(), label: "Calculators".to_owned() }],
                ..bench
            },
        ),
    ];
    for (name, frame) in pages {
        fs::write(folder.join(name), page(&w, &frame).into_string().replace("\"/assets/", "\"assets/"))?;
    }
    Ok(())
}
