#pragma once
// The whole result of a run, ready for any writer.

#include "judging/finding.hpp"
#include "measure/read.hpp"
#include "wood/room_year.hpp"

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace jointwright {

struct PartLine {
    std::string id;
    int copies = 1;
    double length_m = 0, width_m = 0, thickness_m = 0; ///< as drawn
    std::optional<double> mass_kg;                     ///< of one copy, let-ins taken off; nothing where its density is not known
    std::string wood;                                  ///< species in words, for people
    std::string grain;                                 ///< "left to right", "front to back", "upright"
};

struct ContactLine {
    std::string first, second;        ///< copies, "slat #1"
    std::optional<std::string> joint; ///< kind, or none: dry and touching
    std::optional<std::string> glue;
    double area_m2 = 0;
    std::optional<double> grain_angle_deg; ///< in the plane of the largest face; none at end grain
};

/// One stated joint for people: "slat / long rail, housing, glued with PVA, 26 places".
struct JointLine {
    std::string first, second, kind;
    std::optional<std::string> glue;
    int places = 0;
};

/// The blank of one part, as it is cut at the moisture of glue-up.
struct CutPart {
    std::string id;
    int copies = 0;
    double length_m = 0, width_m = 0, thickness_m = 0; ///< tenons that come on top are in the length
    double shoulders_m = 0, tenons_m = 0;              ///< between shoulders; all tenons together, 0 without any
    int boards = 1;                                    ///< side by side, glued up
    bool tapered = false;
    double rounded_m = 0; ///< radius of the long edges
};

/// A stretch of the lines of "Cut today": from its first line to that of the next group.
struct CutGroup {
    std::string heading;   ///< "Joints"
    std::size_t first = 0; ///< index of its first line
};

/// What one check does not see.
struct LeftOut {
    std::string check;               ///< id
    std::vector<std::string> points; ///< a sentence or a few each
};

struct DrawnPiece; // drawn_piece.hpp

struct ReportContent {
    std::string program_version, data_version;
    std::string piece_name, use;
    LengthUnit units = LengthUnit::millimetre; ///< of what people read
    std::optional<double> mass_kg;             ///< nothing where the density of some part is not known
    std::optional<std::string> room_name;
    std::optional<RoomYear> room_year; ///< where the room is known month by month
    double moisture_driest_pct = 0, moisture_dampest_pct = 0, moisture_at_glue_up_pct = 0;
    std::vector<PartLine> parts;
    std::vector<JointLine> joints;
    std::vector<ContactLine> contacts;
    Verdict verdict = Verdict::pass; ///< pass, warn or fail; cannot-tell counts as warn
    std::vector<Finding> findings;   ///< sorted
    std::vector<FirstStep>
        do_first; ///< one for each finding that does not pass and has a remedy, alike ones once; in their order
    std::vector<std::string> assumed;
    std::vector<std::string> cautions;
    std::vector<LeftOut> left_out;      ///< by the checks that have findings
    std::vector<std::string> cut_today; ///< lines under the heading "Cut today": parts, joints, gaps and slots, glue-up
    std::vector<CutGroup> cut_groups;   ///< of those lines, none of them empty; may be empty itself, then the lines stand alone
    std::vector<CutPart> cut_parts;     ///< the same parts as in its first lines
    std::shared_ptr<const DrawnPiece> drawn; ///< for drawings; only when asked for
    std::optional<std::string> date;         ///< only when asked for
};

/// Counts of the four verdicts.
struct VerdictCounts {
    int pass = 0, warn = 0, fail = 0, cannot_tell = 0;
};
VerdictCounts count_verdicts(const std::vector<Finding>& findings);
/// Worst of the findings; cannot-tell counts as warn.
Verdict overall_verdict(const std::vector<Finding>& findings);

} // namespace jointwright
