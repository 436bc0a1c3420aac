//! Goal: recordings come in as they were written, and what is no recording is named by place.
//! Method: files made here with known samples; damaged files in many ways.

use std::io::Cursor;

use hound::{SampleFormat, WavSpec, WavWriter};
use instrument::{Recording, RecordingError, read_csv, read_recording, read_wav};
use words::check::InWords;

fn swing(i: usize) -> f64 {
    0.8 * (i as f64 * 0.05).sin()
}

fn wav(bits_per_sample: u16, channels: u16, sample_format: SampleFormat, count: usize) -> Vec<u8> {
    let spec = WavSpec { channels, sample_rate: 8000, bits_per_sample, sample_format };
    let mut bytes = Cursor::new(Vec::new());
    let mut writer = WavWriter::new(&mut bytes, spec).unwrap();
    for i in 0..count {
        for channel in 0..channels {
            let value = if channel == 0 { swing(i) } else { -0.5 * swing(i) };
            match sample_format {
                SampleFormat::Float => writer.write_sample(value as f32).unwrap(),
                SampleFormat::Int => {
                    let scale = 2_f64.powi(i32::from(bits_per_sample) - 1);
                    writer.write_sample((value * scale).round() as i32).unwrap();
                }
            }
        }
    }
    writer.finalize().unwrap();
    bytes.into_inner()
}

fn assert_swing(recording: &Recording, axes: usize, tolerance: f64) {
    assert_eq!(recording.axes.len(), axes);
    for (i, value) in recording.axes[0].iter().enumerate() {
        assert!((value - swing(i)).abs() <= tolerance, "{i}: {value}");
    }
    if let Some(second) = recording.axes.get(1) {
        assert!(second.iter().enumerate().all(|(i, value)| (value + 0.5 * swing(i)).abs() <= tolerance));
    }
}

#[test]
fn every_wav_format_gives_its_samples() {
    for (bits, format) in [
        (8, SampleFormat::Int),
        (16, SampleFormat::Int),
        (24, SampleFormat::Int),
        (32, SampleFormat::Int),
        (32, SampleFormat::Float),
    ] {
        for channels in [1, 2] {
            let recording = read_recording(&wav(bits, channels, format, 500)).unwrap();
            assert_eq!(recording.sample_rate_hz, 8000.0);
            assert_eq!(recording.full_scale, (format == SampleFormat::Int).then_some(1.0));
            assert_eq!(recording.axes[0].len(), 500);
            assert!((recording.duration_s() - 0.0625).abs() < 1e-12);
            // Half a step of the format, or the rounding of a 32-bit float.
            let step = if format == SampleFormat::Float { 1e-7 } else { 2_f64.powi(-i32::from(bits)) };
            assert_swing(&recording, usize::from(channels), step + 1e-12);
        }
    }
}

#[test]
fn wav_files_that_cannot_be_used_are_named() {
    assert_eq!(read_wav(&[]), Err(RecordingError::Empty));
    assert!(matches!(read_wav(b"RIFF and then something else entirely"), Err(RecordingError::NotWav { .. })));
    assert_eq!(read_wav(&wav(16, 3, SampleFormat::Int, 100)), Err(RecordingError::Axes { count: 3, limit: 2 }));
    assert_eq!(read_wav(&wav(16, 1, SampleFormat::Int, 3)), Err(RecordingError::TooShort { count: 3, limit: 16 }));
    let mut no_rate = wav(16, 1, SampleFormat::Int, 100);
    no_rate[24..28].fill(0);
    assert!(read_wav(&no_rate).is_err());
    let mut no_channels = wav(16, 1, SampleFormat::Int, 100);
    no_channels[22..24].fill(0);
    assert_eq!(read_wav(&no_channels), Err(RecordingError::Axes { count: 0, limit: 2 }));
}

#[test]
fn float_samples_that_are_no_numbers_are_refused() {
    let mut bytes = wav(32, 1, SampleFormat::Float, 100);
    let last = bytes.len() - 4;
    bytes[last..].copy_from_slice(&f32::NAN.to_le_bytes());
    assert!(matches!(read_wav(&bytes), Err(RecordingError::NotWav { reason }) if reason.contains("sample 99")));
}

// Damaged files must end in an error or in samples, never in a panic: each byte of the header set to several values,
// and the file cut at every length near it.
#[test]
fn damaged_wav_files_do_no_harm() {
    for whole in
        [wav(16, 2, SampleFormat::Int, 40), wav(24, 1, SampleFormat::Int, 40), wav(32, 1, SampleFormat::Float, 40)]
    {
        let mut seen = [0, 0];
        for at in 0..80.min(whole.len()) {
            for value in [0, 1, 3, 7, 16, 32, 64, 127, 128, 254, 255] {
                let mut bytes = whole.clone();
                bytes[at] = value;
                seen[usize::from(read_wav(&bytes).is_ok())] += 1;
            }
            seen[usize::from(read_wav(&whole[..at]).is_ok())] += 1;
        }
        assert!(seen[0] > 100 && seen[1] > 100, "both ends occur: {seen:?}");
    }
}

fn table(heading: &str, row: impl Fn(usize) -> String) -> String {
    let mut text = heading.to_owned();
    for i in 0..200 {
        text.push_str(&row(i));
        text.push('\n');
    }
    text
}

#[test]
fn tables_are_read_in_their_usual_shapes() {
    let dot = |i: usize| i as f64 / 500.0;
    let comma = |value: f64| format!("{value}").replace('.', ",");
    let shapes = [
        table("", |i| format!("{},{}", dot(i), swing(i))),
        table("time_s,x\n", |i| format!("{},{}", dot(i), swing(i))),
        table("\u{feff}Time [ms];x\r\n", |i| format!("{};{}\r", comma(dot(i) * 1000.0), comma(swing(i)))),
        table("# logger 3\n\nt_us\tx\n", |i| format!("{}\t{}", dot(i) * 1e6, swing(i))),
    ];
    for text in shapes {
        let recording = read_recording(text.as_bytes()).unwrap_or_else(|error| panic!("{error}\n{}", &text[..60]));
        assert!((recording.sample_rate_hz - 500.0).abs() < 1e-6, "{}", recording.sample_rate_hz);
        assert_eq!(recording.full_scale, None);
        assert_swing(&recording, 1, 1e-12);
    }
    let two = table("time_s, x, y\n", |i| format!("{}, {}, {}", dot(i), swing(i), -0.5 * swing(i)));
    assert_swing(&read_csv(two.as_bytes()).unwrap(), 2, 1e-12);
}

// Times printed to the millisecond at 300 Hz: each is rounded by up to half a millisecond of a step of 3.3 ms.
#[test]
fn times_with_few_decimals_are_still_even() {
    let text = table("time_s,x\n", |i| format!("{:.3},{}", i as f64 / 300.0, swing(i)));
    assert!((read_csv(text.as_bytes()).unwrap().sample_rate_hz - 300.0).abs() < 1.0);
}

#[test]
fn what_is_wrong_in_a_table_is_named_by_its_place() {
    let good = |i: usize| format!("{},{}", i as f64 / 500.0, swing(i));
    let bad = |at: usize, row: &str| {
        let text = table("time_s,x\n", |i| if i == at { row.to_owned() } else { good(i) });
        read_csv(text.as_bytes()).unwrap_err()
    };
    // Row 1 is the heading, so sample 10 stands in row 12.
    assert_eq!(bad(10, "0.02,oops"), RecordingError::NotANumber { row: 12, column: 2, text: "oops".to_owned() });
    assert_eq!(bad(10, "0.02,NaN"), RecordingError::NotANumber { row: 12, column: 2, text: "NaN".to_owned() });
    assert_eq!(bad(10, "0.02,"), RecordingError::NotANumber { row: 12, column: 2, text: String::new() });
    assert_eq!(bad(10, "0.02,1,2"), RecordingError::Ragged { row: 12, count: 3, expected: 2 });
    assert_eq!(bad(10, "0.018,1"), RecordingError::TimeBackwards { row: 12, value_s: 0.018, limit_s: 0.018 });
    assert!(matches!(bad(10, "0.0192,1"), RecordingError::Uneven { row: 12, .. }));
    assert!(matches!(bad(0, "-4,1"), RecordingError::Uneven { .. }), "a gap");
}

#[test]
fn tables_that_are_no_recordings_are_refused() {
    assert_eq!(read_csv(b""), Err(RecordingError::Empty));
    assert_eq!(read_csv(b"\n  \n# only words\n"), Err(RecordingError::Empty));
    assert_eq!(read_csv(b"time_s,x\n"), Err(RecordingError::Empty));
    assert_eq!(read_csv(b"1\n2\n"), Err(RecordingError::Axes { count: 0, limit: 2 }));
    assert_eq!(read_csv(b"0,1,2,3\n"), Err(RecordingError::Axes { count: 3, limit: 2 }));
    assert_eq!(read_csv(b"0,1\n1,2\n"), Err(RecordingError::TooShort { count: 2, limit: 16 }));
    assert_eq!(read_csv(b"minutes,x\n0,1\n"), Err(RecordingError::TimeUnit { heading: "minutes".to_owned() }));
    assert!(matches!(read_csv(&[b'0', b',', 0xff, 0xfe]), Err(RecordingError::NotATable { .. })));
}

#[test]
fn messages_say_where_and_what_to_do() {
    let error = RecordingError::NotANumber { row: 12, column: 2, text: "oops".to_owned() };
    assert_eq!(
        error.in_words(),
        "row 12, column 2: “oops” is not a number. Write plain figures, one row for each instant"
    );
}
