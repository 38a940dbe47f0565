//! Tiles cover, overlap and keep the margin, whatever the paper.

use super::*;

fn board(width: f64, height: f64) -> Rect {
    Rect::new(
        Point::new(-width / 2.0, 0.0),
        Point::new(width / 2.0, height),
    )
}

#[test]
fn what_fits_on_one_sheet_stays_on_one() {
    let tiling = tiles(board(190.0, 259.4), &Sheet::plain(Paper::A4OrLetter)).unwrap();
    assert_eq!(
        (tiling.columns, tiling.rows, tiling.landscape),
        (1, 1, false)
    );
    assert_eq!(tiling.tiles[0].marks, []);
    let across = tiles(board(220.0, 140.0), &Sheet::plain(Paper::A4OrLetter)).unwrap();
    assert_eq!((across.tiles.len(), across.landscape), (1, true));
}

#[test]
fn tiles_cover_the_drawing_overlap_enough_and_keep_the_margin() {
    let mut many = 0;
    for paper in [
        Paper::A4OrLetter,
        Paper::A4,
        Paper::A3,
        Paper::Letter,
        Paper::Legal,
        Paper::Tabloid,
    ] {
        for step in 0..60 {
            let (width, height) = (30.0 + 17.3 * f64::from(step), 20.0 + 11.9 * f64::from(step));
            let sheet = Sheet {
                head: 14.0,
                foot: 20.0,
                ..Sheet::plain(paper)
            };
            let Ok(tiling) = tiles(board(width, height), &sheet) else {
                continue;
            };
            many += usize::from(tiling.tiles.len() > 1);
            assert_eq!(tiling.tiles.len(), tiling.rows * tiling.columns);
            assert!(
                tiling.space.0 <= tiling.sheet.0 - 20.0
                    && tiling.space.1 <= tiling.sheet.1 - 54.0 + 1e-9
            );
            let all = tiling
                .tiles
                .iter()
                .map(|tile| tile.window)
                .reduce(Rect::union)
                .unwrap();
            assert!(all.holds(board(width, height)));
            for tile in &tiling.tiles {
                let find = |name: &Option<String>| {
                    name.as_ref()
                        .map(|name| tiling.tiles.iter().find(|tile| tile.name == *name).unwrap())
                };
                if let Some(right) = find(&tile.right) {
                    assert!(tile.window.max.x - right.window.min.x >= OVERLAP - 1e-9);
                    assert_eq!(right.left.as_ref(), Some(&tile.name));
                }
                if let Some(below) = find(&tile.below) {
                    assert!(below.window.max.y - tile.window.min.y >= OVERLAP - 1e-9);
                    assert_eq!(below.above.as_ref(), Some(&tile.name));
                }
                for mark in &tile.marks {
                    let point = Rect::about(mark.at, 0.0, 0.0);
                    assert!(tile.window.holds(point));
                    let twins = tiling
                        .tiles
                        .iter()
                        .flat_map(|tile| &tile.marks)
                        .filter(|other| other.label == mark.label);
                    assert_eq!(twins.filter(|other| other.at == mark.at).count(), 2);
                }
            }
        }
    }
    assert!(many > 60, "{many} cases with more than one sheet");
}

#[test]
fn a_long_board_gets_few_sheets_and_their_names() {
    let sheet = Sheet {
        foot: 20.0,
        side: 5.0,
        ..Sheet::plain(Paper::A4)
    };
    let tiling = tiles(board(400.0, 150.0), &sheet).unwrap();
    assert!(tiling.landscape && tiling.tiles.len() == 2);
    let names: Vec<_> = tiling.tiles.iter().map(|tile| tile.name.as_str()).collect();
    assert_eq!(names, ["A1", "A2"]);
    assert_eq!(tiling.tiles[0].right.as_deref(), Some("A2"));
    // As much as fits comes on the first sheet.
    let [first, last] = [0, 1].map(|tile| tiling.tiles[tile].window);
    assert!((first.width() - tiling.space.0).abs() < 1e-9 && last.width() < first.width());
    assert!((first.max.x - last.min.x - OVERLAP).abs() < 1e-9);
}

#[test]
fn the_room_shrinks_so_that_a_corrected_sheet_stays_inside_its_margins() {
    for (x, y, skew_deg) in [(1.02, 1.0, 0.0), (0.97, 1.03, 1.0), (1.25, 0.8, -5.0)] {
        let correction = Correction { x, y, skew_deg };
        let sheet = Sheet {
            correction,
            ..Sheet::plain(Paper::A4)
        };
        for landscape in [false, true] {
            let (held, (width, height)) = (sheet.held(landscape), sheet.content(landscape));
            let corners = Rect::new(Point::default(), Point::new(width, height)).corners();
            let drawn = corners.map(|corner| correction.corrected(corner));
            let drawn = Rect::around(drawn).unwrap();
            assert!(drawn.width() <= held.0 - 20.0 + 1e-9, "{correction:?}");
            assert!(drawn.height() <= held.1 - 20.0 + 1e-9, "{correction:?}");
            assert!(width <= held.0 - 20.0 && height <= held.1 - 20.0);
            // At worst 1 in 1.25, and what a lean of 5° over the height takes from the width.
            assert!(width > 0.55 * (held.0 - 20.0) && height > 0.7 * (held.1 - 20.0));
        }
    }
}

#[test]
fn more_than_twenty_sheets_are_refused_with_their_number() {
    let refused = tiles(board(1200.0, 1200.0), &Sheet::plain(Paper::A4)).unwrap_err();
    assert_eq!(
        refused,
        TilesFault::TooManySheets {
            paper: Paper::A4,
            size: (1200.0, 1200.0),
            sheets: 35.0
        }
    );
    let refused = tiles(board(1e300, 1.0), &Sheet::plain(Paper::A4)).unwrap_err();
    assert!(matches!(refused, TilesFault::TooManySheets { .. }));
}

#[test]
fn paper_or_drawing_without_room_is_refused() {
    for (width, height) in [(0.0, 10.0), (f64::NAN, 10.0), (f64::INFINITY, 10.0)] {
        let bounds = Rect {
            min: Point::new(0.0, 0.0),
            max: Point::new(width, height),
        };
        assert_eq!(
            tiles(bounds, &Sheet::plain(Paper::A4)),
            Err(TilesFault::NoSize)
        );
    }
    let full = Sheet {
        head: 400.0,
        ..Sheet::plain(Paper::A4)
    };
    let no_room = |overlap: f64| {
        let paper = Paper::A4;
        Err(TilesFault::NoRoom { paper, overlap })
    };
    assert_eq!(tiles(board(10.0, 10.0), &full), no_room(OVERLAP));
    let wide = Sheet {
        overlap: 500.0,
        ..Sheet::plain(Paper::A4)
    };
    assert_eq!(tiles(board(1000.0, 10.0), &wide), no_room(500.0));
}

#[test]
fn seams_and_marks_keep_clear_of_what_is_to_be_avoided() {
    let sheet = Sheet::plain(Paper::A4OrLetter);
    let hole = |x: f64, y: f64| Avoid {
        area: Rect::about(Point::new(x, y), 16.0, 16.0),
        weight: 1.0,
    };
    // A hole where the seam of two nearly full sheets would run, and one where its first mark would be.
    let plain = tiles(board(330.0, 150.0), &sheet).unwrap();
    let seam = |tiling: &Tiling| {
        let [one, other] = [0, 1].map(|tile| tiling.tiles[tile].window);
        Rect::new(other.min, one.max)
    };
    let avoid = [hole(seam(&plain).centre().x, 60.0)];
    let moved = tiles_around(board(330.0, 150.0), &sheet, &avoid).unwrap();
    assert!(seam(&plain).overlaps(avoid[0].area));
    assert!(!seam(&moved).overlaps(avoid[0].area));
    let mark = moved.tiles[0].marks[0].at;
    let avoid = [avoid[0], hole(mark.x, mark.y + 7.0)];
    let away = tiles_around(board(330.0, 150.0), &sheet, &avoid).unwrap();
    let marks = away.tiles[0].marks.iter();
    for mark in marks {
        let space = Rect::about(mark.at, 9.0, 9.0);
        assert!(
            avoid.iter().all(|one| !one.area.overlaps(space)),
            "{mark:?}"
        );
    }
}
