//! Goal: the list of calculations is told in words.

use clubphysics::calc::topics;

#[test]
fn every_topic_has_its_title_and_summary() {
    let told: Vec<_> = topics().iter().flat_map(|topic| [topic.title(), topic.summary()]).collect();
    words::check::texts_of_list(&told);
}
