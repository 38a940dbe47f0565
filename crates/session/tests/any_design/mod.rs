//! Designs of any kind, right and wrong, for property tests.

use latchwright_model::{
    Bench, Board, Body, Bore, Card, CardPaper, CardStyle, Climate, Corner, Design, Dial, Disc,
    Floor, Grain, Hinge, HoleReading, Inside, Keeper, KeeperMake, Key, Knob, Labels, Language,
    LidKind, Material, OwnWood, Paper, Pin, PinMake, Plate, Printer, Sawn, Season, Slider, Slot,
    Tab, Units, Workmanship,
};
use proptest::collection::vec;
use proptest::num::f64::{NEGATIVE, NORMAL, POSITIVE, SUBNORMAL};
use proptest::prelude::*;
use proptest::sample::select;

/// Any length, from the everyday to the absurd; never −0, which a file does not know.
fn size() -> impl Strategy<Value = f64> {
    prop_oneof![
        4 => (-20_000..20_000_i32).prop_map(|hundredths| f64::from(hundredths) / 100.0),
        1 => -1000.0..1000.0,
        1 => POSITIVE | NEGATIVE | NORMAL | SUBNORMAL,
    ]
    .prop_map(|size| if size == 0.0 { 0.0 } else { size })
}

/// Any text a person or a hostile file could put in a name.
fn text() -> impl Strategy<Value = String> {
    prop_oneof![
        "[a-z ]{0,12}",
        any::<String>(),
        Just("花子 \"x\"\\\n\u{202E}\u{301}".to_owned())
    ]
}

fn sawn() -> impl Strategy<Value = Sawn> {
    prop_oneof![Just(Sawn::Flat), Just(Sawn::Quarter)]
}

fn grain() -> impl Strategy<Value = Grain> {
    prop_oneof![Just(Grain::AlongX), Just(Grain::AlongY)]
}

fn material() -> impl Strategy<Value = Material> {
    prop_oneof![
        (text(), sawn(), grain()).prop_map(|(species, sawn, grain)| Material::Wood {
            species,
            sawn,
            grain
        }),
        Just(Material::Plywood),
        Just(Material::Hardboard),
        Just(Material::Mdf),
        Just(Material::Printed),
    ]
}

fn pin_make() -> impl Strategy<Value = PinMake> {
    prop_oneof![
        Just(PinMake::Steel),
        Just(PinMake::Dowel),
        Just(PinMake::PrintedLying),
        Just(PinMake::PrintedStanding),
    ]
}

fn labels() -> impl Strategy<Value = Labels> {
    prop_oneof![
        Just(Labels::Digits),
        Just(Labels::Letters),
        vec(text(), 0..14).prop_map(Labels::Words),
        vec(text(), 0..14).prop_map(Labels::Pictures),
    ]
}

fn slot() -> impl Strategy<Value = Slot> {
    (any::<i64>(), size(), size(), size()).prop_map(|(mark, width, depth, lead_in)| Slot {
        mark,
        width,
        depth,
        lead_in,
    })
}

fn dial() -> impl Strategy<Value = Dial> {
    let sizes = vec(size(), 16);
    (
        any::<u32>(),
        labels(),
        vec(slot(), 0..4),
        any::<u32>(),
        sizes,
        pin_make(),
    )
        .prop_map(|(positions, labels, slots, sides, sizes, make)| Dial {
            centre: (sizes[0], sizes[1]),
            positions,
            labels,
            disc: Disc {
                radius: sizes[2],
                thickness: sizes[3],
                below: sizes[13],
                slots,
            },
            pin: Pin {
                offset: sizes[4],
                diameter: sizes[5],
                gap: sizes[6],
                height: sizes[14],
                free: sizes[15],
                make,
            },
            key: Key {
                sides,
                apothem: sizes[7],
                clearance: sizes[8],
            },
            bore: Bore {
                diameter: sizes[9],
                shaft_play: sizes[10],
            },
            knob: Knob {
                diameter: sizes[11],
                height: sizes[12],
            },
        })
}

fn plate() -> impl Strategy<Value = Plate> {
    (vec(size(), 5), text(), sawn(), grain()).prop_map(|(sizes, wood, sawn, grain)| Plate {
        width: sizes[0],
        depth: sizes[1],
        thickness: sizes[2],
        rabbet: sizes[3],
        room: sizes[4],
        wood,
        sawn,
        grain,
    })
}

fn slider() -> impl Strategy<Value = Slider> {
    (vec(size(), 11), material()).prop_map(|(sizes, material)| Slider {
        travel: sizes[0],
        guide_length: sizes[1],
        guide_play: sizes[2],
        guide_at: (sizes[3], sizes[4]),
        pull_at: sizes[5],
        shank: sizes[6],
        thickness: sizes[7],
        below: sizes[8],
        pull: sizes[9],
        friction: sizes[10],
        material,
    })
}

fn workmanship() -> impl Strategy<Value = Workmanship> {
    vec(size(), 8).prop_map(|sizes| Workmanship {
        pin_place: sizes[0],
        bore_place: sizes[1],
        keeper_place: sizes[2],
        print: sizes[3],
        film: sizes[4],
        film_spread: sizes[5],
        reading: sizes[6],
        thickness: sizes[7],
    })
}

fn season() -> impl Strategy<Value = Season> {
    let air = || (size(), size()).prop_map(|(celsius, humidity)| Climate { celsius, humidity });
    (air(), air(), air()).prop_map(|(built, driest, dampest)| Season {
        built,
        driest,
        dampest,
    })
}

fn own_wood() -> impl Strategy<Value = OwnWood> {
    (text(), size(), size()).prop_map(|(name, radial, tangential)| OwnWood {
        name,
        radial,
        tangential,
    })
}

fn card() -> impl Strategy<Value = Card> {
    let paper = prop_oneof![
        Just(CardPaper::A6),
        Just(CardPaper::A5),
        Just(CardPaper::FoldedA4)
    ];
    let speech = (
        select(Language::ALL.as_slice()),
        select(CardStyle::ALL.as_slice()),
    );
    let words = (text(), text(), text());
    (paper, speech, words, any::<u32>(), any::<bool>()).prop_map(
        |(paper, (language, style), (recipient, greeting, from), youngest, show_combination)| {
            Card {
                language,
                style,
                paper,
                recipient,
                youngest,
                greeting,
                from,
                show_combination,
            }
        },
    )
}

fn corner() -> impl Strategy<Value = Corner> {
    prop_oneof![
        Just(Corner::Mitred),
        Just(Corner::Butted),
        Just(Corner::Rabbeted)
    ]
}

fn body() -> impl Strategy<Value = Body> {
    let lid = prop_oneof![
        Just(LidKind::Plate),
        size().prop_map(|height| LidKind::Band { height })
    ];
    (vec(size(), 8), text(), sawn(), corner(), lid, material()).prop_map(
        |(sizes, wood, sawn, corner, lid, material)| Body {
            thickness: sizes[0],
            wood,
            sawn,
            corner,
            lid,
            groove: sizes[1],
            foot: sizes[2],
            floor: Floor {
                thickness: sizes[3],
                material,
            },
            hinge: Hinge {
                length: sizes[4],
                leaf: sizes[5],
                thickness: sizes[6],
                inset: sizes[7],
            },
        },
    )
}

fn board() -> impl Strategy<Value = Board> {
    (text(), vec(size(), 3), any::<u32>()).prop_map(|(wood, sizes, count)| Board {
        wood,
        length: sizes[0],
        width: sizes[1],
        thickness: sizes[2],
        count,
    })
}

fn printer() -> impl Strategy<Value = Printer> {
    let hole = (size(), size()).prop_map(|(diameter, under)| HoleReading { diameter, under });
    (vec(size(), 10), vec(hole, 0..4)).prop_map(|(sizes, holes)| Printer {
        nozzle: sizes[0],
        layer: sizes[1],
        bed: (sizes[2], sizes[3]),
        height: sizes[4],
        holes,
        outside: sizes[5],
        foot: sizes[6],
        corner: sizes[7],
        density: sizes[8],
        filament: sizes[9],
    })
}

fn bench() -> impl Strategy<Value = Bench> {
    let paper = prop_oneof![
        Just(Paper::A4OrLetter),
        Just(Paper::A4),
        Just(Paper::A3),
        Just(Paper::Letter),
        Just(Paper::Legal),
        Just(Paper::Tabloid)
    ];
    let numbers = (vec(size(), 3), any::<u32>(), any::<u32>());
    (
        vec(size(), 0..5),
        vec(board(), 0..3),
        numbers,
        (paper, any::<bool>()),
        printer(),
    )
        .prop_map(
            |(bits, boards, (sizes, coats, fraction), (paper, coated_prints), printer)| Bench {
                bits,
                boards,
                kerf: sizes[0],
                end_trim: sizes[1],
                rough: sizes[2],
                coats,
                coated_prints,
                paper,
                fraction,
                printer,
            },
        )
}

/// Any design a file can hold.
pub fn design() -> impl Strategy<Value = Design> {
    let units = prop_oneof![Just(Units::Millimetre), Just(Units::Inch)];
    let tab = vec(size(), 4).prop_map(|sizes| Tab {
        at: sizes[0],
        width: sizes[1],
        engagement: sizes[2],
        required_hold: sizes[3],
    });
    let make = prop_oneof![Just(KeeperMake::Wood), Just(KeeperMake::Printed)];
    let keeper = (vec(size(), 4), make).prop_map(|(sizes, make)| Keeper {
        edge: sizes[0],
        width: sizes[1],
        depth: sizes[2],
        thickness: sizes[3],
        make,
    });
    let inside = vec(size(), 3).prop_map(|sizes| Inside {
        width: sizes[0],
        depth: sizes[1],
        height: sizes[2],
    });
    let words = (text(), units, vec(any::<u32>(), 0..6), vec(dial(), 0..4));
    (
        words,
        plate(),
        slider(),
        tab,
        (keeper, inside, body()),
        workmanship(),
        (season(), vec(own_wood(), 0..3)),
        (card(), bench()),
    )
        .prop_map(
            |(
                (title, units, combination, dials),
                plate,
                slider,
                tab,
                (keeper, inside, body),
                workmanship,
                (season, own_woods),
                (card, bench),
            )| {
                Design {
                    title,
                    units,
                    plate,
                    slider,
                    tab,
                    keeper,
                    inside,
                    body,
                    dials,
                    combination,
                    workmanship,
                    season,
                    own_woods,
                    bench,
                    card,
                }
            },
        )
}
