//! Lists of parts and models: import, export, labels.

use super::work::{busy, bytes_of};
use super::{print_json, reader, say};
use crate::config::{CalendarArguments, Export, Import, Labels};
use crate::failure::CommandFault;
use crate::failure::Failure;
use crate::terminal::line;
use app::App;
use app::export::ReadingsOf;
use app::order::OrderQuery;
use app::stock::{PartQuery, PartsImported};
use desk::stock_file::Mapping;
use indicatif::{ProgressBar, ProgressStyle};
use look::{LabelPaper, label_document};
use std::collections::BTreeMap;
use std::path::Path;
use trade::label_printer::{Fineness, LabelPrinter, PageLanguage};
use words::text;

/// Imports parts or models.
///
/// # Errors
/// A file that cannot be read or is neither; a mapping that does not fit it; what the store says.
pub async fn import(arguments: &Import) -> Result<(), Failure> {
    let bytes = bytes_of(&arguments.file)?;
    let mapping = mapping(arguments)?;
    let app = arguments.database.open_or_make().await?;
    let models = arguments.file.extension().is_some_and(|e| e.eq_ignore_ascii_case("json"));
    let refused = if models {
        import_models(&app, bytes, arguments.database.json).await?
    } else {
        let mapping = match &arguments.layout {
            Some(name) => app.layout(name).await?.mapping,
            None => mapping,
        };
        let refused = import_parts(&app, &bytes, &mapping, arguments).await?;
        if let Some(name) = &arguments.remember {
            app.remember_layout(name, &bytes, &mapping).await?;
        }
        refused
    };
    app.close().await;
    if refused > 0 {
        return Err(Failure::usage(CommandFault::RowsRefused { n: refused }).answered());
    }
    Ok(())
}

async fn import_models(app: &App, bytes: Vec<u8>, json: bool) -> Result<usize, Failure> {
    let text = String::from_utf8(bytes).map_err(|_| Failure::usage(CommandFault::NotUtf8))?;
    let bar = busy("importing", json);
    let done = app.import_models(&text).await?;
    bar.finish_and_clear();
    if json {
        print_json(&done)?;
    } else {
        let w = reader();
        line!("{}", text!(w, "stock-list-models", kept = done.kept.len(), refused = done.bad.len()));
        for bad in &done.bad {
            line!(
                "  entry {}, {}: {}",
                bad.entry,
                bad.code,
                super::reader().refusal(&fact::Refusal::new(&bad.problem))
            );
        }
    }
    Ok(done.bad.len())
}

async fn import_parts(app: &App, bytes: &[u8], mapping: &Mapping, arguments: &Import) -> Result<usize, Failure> {
    let json = arguments.database.json;
    let bar = if json { ProgressBar::hidden() } else { ProgressBar::new(0) };
    if let Ok(style) = ProgressStyle::with_template("{bar:40} {pos} of {len} parts, {elapsed}") {
        bar.set_style(style);
    }
    let done = app
        .import_mapped(bytes, mapping, |written, all| {
            bar.set_length(all as u64);
            bar.set_position(written as u64);
        })
        .await?;
    bar.finish_and_clear();
    if let Some(path) = arguments.refused.as_ref().filter(|_| !done.bad.is_empty()) {
        std::fs::write(path, &done.bad_csv).map_err(|e| Failure::file(path, &e))?;
    }
    if json {
        print_json(&done)?;
    } else {
        tell(&done)?;
    }
    Ok(done.bad.len())
}

fn tell(done: &PartsImported) -> Result<(), Failure> {
    let w = reader();
    let mut printed = text!(w, "stock-list-done", kept = done.kept, refused = done.bad.len()) + "\n";
    if !done.unused.is_empty() {
        printed.push_str(&format!("  {}\n", text!(w, "stock-list-unused", headings = done.unused)));
    }
    for warning in &done.warnings {
        let (line, code, doubt) = (warning.line, warning.code.as_str(), &warning.doubt);
        printed.push_str(&format!("  {}\n", text!(w, "stock-list-warning", line = line, code = code, doubt = *doubt)));
    }
    for bad in &done.bad {
        printed.push_str(&format!("  {}\n", bad.told(&super::reader())));
    }
    say(&printed)
}

fn mapping(arguments: &Import) -> Result<Mapping, Failure> {
    Ok(Mapping {
        sheet: arguments.sheet.clone(),
        header_line: arguments.header_line,
        columns: pairs("--map", &arguments.map, "mass=\"Weight (g)\"")?,
        units: pairs("--unit", &arguments.unit, "mass=oz")?,
        fixed: pairs("--set", &arguments.set, "model=HERON")?,
        ignore_others: arguments.ignore_others || !arguments.map.is_empty() || !arguments.set.is_empty(),
    })
}

fn pairs(option: &str, given: &[String], example: &str) -> Result<BTreeMap<String, String>, Failure> {
    let mut pairs = BTreeMap::new();
    for text in given {
        let Some((name, value)) = text.split_once('=') else {
            return Err(Failure::usage(CommandFault::NoEqualSign {
                option: option.to_owned(),
                text: text.clone(),
                example: example.to_owned(),
            }));
        };
        if pairs.insert(name.trim().to_owned(), value.trim().to_owned()).is_some() {
            return Err(Failure::usage(CommandFault::OptionTwice {
                option: option.to_owned(),
                name: name.trim().to_owned(),
            }));
        }
    }
    Ok(pairs)
}

/// Writes the calendar, or tells its entries.
///
/// # Errors
/// A file that cannot be written; what the store says.
pub async fn calendar(arguments: &CalendarArguments) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    if arguments.database.json {
        let entries = app.calendar().await?;
        app.close().await;
        return super::print_json(&entries);
    }
    let text = app.calendar_file(&reader(), None).await?;
    app.close().await;
    write(arguments.file.as_deref(), text.as_bytes())
}

/// Exports a list.
///
/// # Errors
/// A file that cannot be written; what the store says.
pub async fn export(arguments: &Export) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let as_book = arguments.out.as_ref().is_some_and(|p| p.extension().is_some_and(|e| e.eq_ignore_ascii_case("xlsx")));
    let what = if arguments.models { "models" } else { arguments.what.as_str() };
    let bytes = if what == "models" {
        app.export_models().await?.into_bytes()
    } else if let Some(text) = list_of(&app, what, arguments).await? {
        text.into_bytes()
    } else if arguments.database.json {
        let (parts, _) = app.parts(&PartQuery::default()).await?;
        let text = serde_json::to_string_pretty(&parts)
            .map_err(|e| Failure::outside(CommandFault::AnswerUnwritable { log: e.to_string() }))?;
        (text + "\n").into_bytes()
    } else if as_book {
        app.export_workbook(&PartQuery::default()).await?
    } else {
        app.export_parts(&PartQuery::default()).await?.into_bytes()
    };
    app.close().await;
    write(arguments.out.as_deref(), &bytes)
}

/// A list that is CSV alone; none for the parts.
async fn list_of(app: &App, what: &str, arguments: &Export) -> Result<Option<String>, Failure> {
    let Export { customer, job, from, to, .. } = arguments;
    Ok(Some(match what {
        "clubs" => app.export_clubs("", *customer).await?,
        "jobs" => app.export_jobs().await?,
        "readings" => app.export_readings(&ReadingsOf { from: *from, to: *to, job: *job }).await?,
        "records" => app.export_records().await?,
        "orders" => app.export_orders(&OrderQuery::default()).await?,
        _ => return Ok(None),
    }))
}

fn write(out: Option<&Path>, bytes: &[u8]) -> Result<(), Failure> {
    match out {
        Some(path) => std::fs::write(path, bytes).map_err(|e| Failure::file(path, &e)),
        None => super::say(bytes),
    }
}

/// Labels of parts as an HTML document to print.
///
/// # Errors
/// A code that is not there; a file that cannot be written; what the store says.
pub async fn labels(arguments: &Labels) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let parts = app.parts_by_code(&arguments.codes).await?;
    let models = app.models(None).await?;
    let mut clubs = Vec::with_capacity(arguments.clubs.len());
    for code in arguments.clubs.iter().map(|code| code.trim()).filter(|code| !code.is_empty()) {
        clubs.push(app.club(code).await?.club);
    }
    if parts.is_empty() && clubs.is_empty() {
        return Err(Failure::usage(CommandFault::NoCodes));
    }
    let w = super::reader();
    let mut labels = web::label_texts(&w, &parts, &models);
    labels.extend(web::club_label_texts(&w, &clubs));
    let printer = match (&arguments.to, &arguments.printer) {
        (Some(to), _) => Some(printer_at(to, arguments)?),
        (None, Some(name)) => Some(app.label_printer(Some(name)).await?),
        (None, None) => None,
    };
    let Some(printer) = printer else {
        app.close().await;
        let paper = if arguments.strip { LabelPaper::Strip } else { LabelPaper::Sheet };
        return write(arguments.out.as_deref(), label_document(&w, &labels, paper).as_bytes());
    };
    let sent = app.print_labels(&printer, &web::printer_labels(&labels), arguments.copies).await;
    app.close().await;
    let sent = sent?;
    if arguments.database.json {
        return print_json(&sent);
    }
    say(&(web::sent_words(&w, &sent) + "\n"))
}

/// The printer that the command line describes.
fn printer_at(to: &str, arguments: &Labels) -> Result<LabelPrinter, Failure> {
    let not_a_size =
        || Failure::usage(CommandFault::NotASize { text: arguments.size.clone(), example: "62x29".to_owned() });
    let (size, inches) = match arguments.size.trim().strip_suffix("in") {
        Some(size) => (size, true),
        None => (arguments.size.trim().trim_end_matches("mm"), false),
    };
    let side = |text: &str| {
        let side: f64 = text.trim().parse().map_err(|_| not_a_size())?;
        Ok::<_, Failure>(if inches { side * 25.4 } else { side })
    };
    let (width, height) = size.split_once(['x', '×']).ok_or_else(not_a_size)?;
    Ok(LabelPrinter {
        name: to.chars().take(40).collect(),
        to: to.to_owned(),
        // The command line lets no other word through.
        language: PageLanguage::from_key(&arguments.language).unwrap_or(PageLanguage::Zpl),
        fineness: Fineness::from_key(&arguments.dots).unwrap_or(Fineness::Dpi203),
        width_mm: side(width)?,
        height_mm: side(height)?,
        gap_mm: 3.0,
    })
}
