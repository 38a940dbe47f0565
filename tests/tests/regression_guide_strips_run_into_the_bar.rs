//! A guide of 60 mm was called proven where its strips would have met the slider's bar after 36; cut to
//! the guide's length, strips also led the slider over less of it once it was drawn back.

use latchwright_model::Design;
use latchwright_proof::CheckKind;
use latchwright_proof::prove;
use latchwright_proof::slider_body::{SliderBody, strips};
use latchwright_tests::thin_latch::thin;

/// From where to where on the slider, along y when it is forward, both a strip and the straight side of
/// the neck are, with the slider this far back; mm.
fn led(design: &Design, travel: f64) -> (f64, f64) {
    let body = SliderBody::of(design);
    let (front, back) = strips(design);
    (
        (front - travel).max(body.tip),
        (back - travel).min(body.bar_min.y),
    )
}

#[test]
fn both_points_of_a_proven_guide_are_led_wherever_the_slider_stands() {
    let design = Design::default();
    assert!(prove(&design).proven);
    let slider = &design.slider;
    let half = slider.guide_length / 2.0;
    let points = (slider.guide_at.1 - half, slider.guide_at.1 + half);
    for step in 0..=100 {
        let travel = slider.travel * f64::from(step) / 100.0;
        let (front, back) = led(&design, travel);
        assert!(front <= points.0 && back >= points.1, "{travel}");
    }
    // and nothing stops the bar on its way forward
    assert!(strips(&design).1 < SliderBody::of(&design).bar_min.y);
}

#[test]
fn a_guide_whose_strips_would_meet_the_bar_is_not_proven() {
    let mut design = thin();
    let slider = &mut design.slider;
    (slider.guide_length, slider.guide_play) = (60.0, 0.25);
    slider.guide_at = (0.0, 45.0);
    let proof = prove(&design);
    assert!(!proof.proven);
    let strips = proof
        .checks
        .iter()
        .find(|check| check.kind == CheckKind::StripsToBar);
    // bar at 51 or 51.5, its corner 3, strips to 83
    let short = strips.map(|check| -check.margin);
    assert!(
        short.is_some_and(|short| (34.5..37.0).contains(&short)),
        "{short:?}"
    );
}
