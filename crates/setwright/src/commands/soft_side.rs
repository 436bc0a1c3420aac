//! The soft side of a shaft.

use super::{print_json, reader, say};
use crate::config::SoftSideArguments;
use crate::failure::Failure;
use app::soft_side::{FindSoftSide, ReadTwoPlanes};
use clubphysics::soft_side::SoftSideInput;

/// Finds the soft side of a club's shaft, or checks it on the finished club.
///
/// # Errors
/// No such job or club; readings that tell nothing; what the store says.
pub async fn soft_side(arguments: &SoftSideArguments) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    let (job, slot, by) = (arguments.job, arguments.slot, arguments.signed.by.clone());
    if let Some((along_line_cpm, heel_toe_cpm)) = arguments.along.zip(arguments.heel_toe) {
        let read = app.two_planes(job, slot, &ReadTwoPlanes { along_line_cpm, heel_toe_cpm, by }).await?;
        app.close().await;
        return if arguments.signed.database.json {
            print_json(&read)
        } else {
            say(&format!("{}\n", reader().told(&read.says)))
        };
    }
    let mut sweep = SoftSideInput::default();
    let read =
        [&arguments.frequency, &arguments.deflection, &arguments.force].into_iter().find(|list| !list.is_empty());
    let (angles_deg, values): (Vec<f64>, Vec<f64>) = read.into_iter().flatten().copied().unzip();
    sweep.angles_deg = angles_deg;
    if !arguments.deflection.is_empty() {
        (sweep.deflections_mm, sweep.fixed_force_n) = (Some(values), arguments.fixed);
    } else if !arguments.force.is_empty() {
        (sweep.forces_n, sweep.fixed_deflection_mm) = (Some(values), arguments.fixed);
    } else {
        sweep.frequencies_cpm = Some(values);
    }
    let find = FindSoftSide { sweep: Some(sweep), pluck: None, keep: arguments.keep, by };
    let kept = app.find_soft_side(job, slot, &find).await?;
    app.close().await;
    if arguments.signed.database.json {
        print_json(&kept)
    } else {
        say(&format!("{}\n", reader().told(&kept.found.says)))
    }
}
