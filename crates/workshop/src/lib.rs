//! The trade's nouns: sheet, part, plan, bench, reading, record.
