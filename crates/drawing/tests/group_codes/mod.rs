//! A small strict reader of DXF by its group codes, which takes nothing from the writer.

/// Pairs of group code and value, checked for their form.
pub struct GroupCodes<'a> {
    pairs: Vec<(u16, &'a str)>,
}

/// A polyline as it stands in the file.
pub struct Line {
    /// Whether flag 1 is set.
    pub closed: bool,
    /// x, y and bulge of each vertex.
    pub vertices: Vec<(f64, f64, f64)>,
}

impl<'a> GroupCodes<'a> {
    /// Reads all pairs; panics where a pair, a section or the end is not as it has to be.
    pub fn read(text: &'a str) -> Self {
        let lines: Vec<&str> = text.split("\r\n").collect();
        assert_eq!(lines.last(), Some(&""), "the last line is ended");
        let lines = &lines[..lines.len() - 1];
        assert!(lines.len().is_multiple_of(2), "codes and values in pairs");
        let pairs: Vec<(u16, &str)> = lines
            .chunks(2)
            .map(|pair| (pair[0].trim().parse().expect("a number"), pair[1]))
            .collect();
        assert_eq!(pairs.last(), Some(&(0, "EOF")));
        let mut open = Vec::new();
        for &(code, value) in &pairs {
            if matches!(code, 10..=59) {
                let number: f64 = value.parse().expect("a number");
                assert!(number.is_finite());
            }
            match (code, value) {
                (0, "SECTION") => open.push("ENDSEC"),
                (0, "TABLE") => open.push("ENDTAB"),
                (0, "POLYLINE") => open.push("SEQEND"),
                (0, "ENDSEC" | "ENDTAB" | "SEQEND") => assert_eq!(open.pop(), Some(value)),
                _ => {}
            }
        }
        assert!(open.is_empty());
        Self { pairs }
    }

    /// The values of a header variable.
    pub fn variable(&self, name: &str) -> Vec<(u16, &'a str)> {
        let after = self.pairs.iter().skip_while(|pair| **pair != (9, name));
        let values = after.skip(1).take_while(|(code, _)| !matches!(code, 0 | 9));
        values.copied().collect()
    }

    /// The entries after each `0 kind`, up to the next `0`.
    fn entries(&self, kind: &str) -> impl Iterator<Item = (usize, Vec<(u16, &'a str)>)> {
        let starts = self.pairs.iter().enumerate();
        let kind = kind.to_owned();
        starts
            .filter(move |(_, pair)| pair.0 == 0 && pair.1 == kind)
            .map(|(at, _)| {
                let rest = self.pairs[at + 1..].iter();
                (at, rest.take_while(|pair| pair.0 != 0).copied().collect())
            })
    }

    /// The names in the table of layers.
    pub fn layers(&self) -> Vec<&'a str> {
        self.entries("LAYER")
            .map(|(_, entry)| value(&entry, 2).expect("a name"))
            .collect()
    }

    /// The polylines on a layer.
    pub fn polylines(&self, layer: &str) -> Vec<Line> {
        let mut lines = Vec::new();
        for (at, entry) in self.entries("POLYLINE") {
            if value(&entry, 8) != Some(layer) {
                continue;
            }
            assert_eq!(value(&entry, 66), Some("1"));
            let end = self
                .entries("SEQEND")
                .map(|(end, _)| end)
                .find(|end| *end > at)
                .expect("an end");
            let vertices = self
                .entries("VERTEX")
                .filter(|(v, _)| (at..end).contains(v));
            lines.push(Line {
                closed: value(&entry, 70) == Some("1"),
                vertices: vertices
                    .map(|(_, vertex)| {
                        let number =
                            |code| value(&vertex, code).map(|text| text.parse().expect("a number"));
                        (
                            number(10).expect("x"),
                            number(20).expect("y"),
                            number(42).unwrap_or(0.0),
                        )
                    })
                    .collect(),
            });
        }
        lines
    }
}

fn value<'a>(entry: &[(u16, &'a str)], code: u16) -> Option<&'a str> {
    entry.iter().find(|pair| pair.0 == code).map(|pair| pair.1)
}
