#pragma once
// The words that the text, Markdown and HTML writers share, so that they say the same things in the same order.

#include "review/content/report_content.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// "Fail", "Warn", "Cannot tell", "Pass".
std::string_view verdict_title(Verdict verdict);
/// "FAIL", "WARN", "CANNOT TELL", "PASS": for plain text, where capitals do the work of colour.
std::string_view verdict_capitals(Verdict verdict);

/// Advice that stands among the cautions and not among the findings, where a word of verdict would stand before it.
bool told_among_cautions(const Finding& finding);
/// Counts of the findings that people read as such.
VerdictCounts counts_for_people(const ReportContent& content);

/// What follows the piece's name in the first sentence: "does not hold as drawn: 1 of 17 findings fails."
std::string verdict_predicate(const ReportContent& content);
/// "1 fail, 1 cannot tell, 2 warn, 13 pass."
std::string counts_sentence(const ReportContent& content);
/// The air of each month and what wood settles at in it, with its source: "Month by month: January 18 % at 20 °C, wood 4.2 %; ...".
std::string room_year_words(const RoomYear& year);
/// "made at 8 %, driest 5.4 %, dampest 11.9 %".
std::string moisture_range_words(const ReportContent& content);

/// One of the things to do first: the first advice of a finding's remedy, as a sentence.
struct FirstThing {
    std::string words;
    std::size_t finding = 0; ///< index of the first that gives it
    int more = 0;            ///< findings that give the same
};
/// Up to three, of the worst findings that do not pass and have a remedy; like advice is told once.
std::vector<FirstThing> first_things(const ReportContent& content);
/// "slat / long rail, glue-line, and 2 more": which findings give it.
std::string first_place_words(const ReportContent& content, const FirstThing& thing);

/// True when everything passes and there is a list to cut by.
bool nothing_to_change(const ReportContent& content);

/// The heading of the group that starts at a line of "Cut today"; nothing within a group.
std::optional<std::string> cut_heading_at(const ReportContent& content, std::size_t line);

/// "18.2 kg", or that it is not known.
std::string mass_words(const std::optional<double>& kilograms, LengthUnit units);

/// "12 in × 1 3/4 in × 5/8 in": length, width, thickness.
std::string part_size_words(const PartLine& part, LengthUnit units);
/// "housing, glued with PVA, 26 places".
std::string joint_words(const JointLine& joint);
/// "slat #1 touches leg #2, 4.1 cm²" for the first pairs of copies that touch without a stated joint, then "and 12 more".
std::vector<std::string> loose_touches(const ReportContent& content);

/// A name of the contract for people: "differential_movement" -> "differential movement".
std::string label_words(std::string_view name);
/// A number of the contract in the maker's units: 0.00041 m -> "0.41 mm", 9.1e6 Pa -> "9.1 MPa". "unknown" when it is not finite.
std::string value_words(double value, std::string_view unit, LengthUnit units);
/// "0.83", two digits behind the point; nothing when there is none or it is not finite.
std::optional<std::string> utilisation_words(const Finding& finding);
/// "differential movement 0.41 mm; restraint stress 1.88 MPa".
std::string values_line(const Finding& finding, LengthUnit units);
/// The sources behind the findings that nobody has read for them: recalled, judged, or practice without a source.
struct UncertainSources {
    std::vector<std::string> lines; ///< "common practice, no source, slat span/180 (estimated): sag", each once, by source
    std::size_t all = 0;            ///< how many different sources there are
};
UncertainSources uncertain_sources(const ReportContent& content);
/// "43 of the 74 sources behind these findings are from memory, estimated, or practice without a source."
std::string uncertain_sentence(const UncertainSources& sources);

/// "jointwright 0.1.0, data 1f3a".
std::string program_words(const ReportContent& content);

// The headings, alike in every writer.
constexpr std::string_view kPieceHeading = "The piece as read";
constexpr std::string_view kFirstHeading = "Do first";
constexpr std::string_view kNothingToChange =
    "Nothing has to change before the first cut; the list for the saw stands further down.";
constexpr std::string_view kFindingsHeading = "Findings";
constexpr std::string_view kCutTodayHeading = "Cut today";
constexpr std::string_view kCutOfFailing = "The piece fails as drawn, and this list is of the piece as drawn: change the design "
                                           "first, then cut by the list of the new one.";
constexpr std::string_view kYearHeading = "Seasons, load and limits";
constexpr std::string_view kAssumedHeading = "Assumed";
constexpr std::string_view kCautionsHeading = "Cautions";
constexpr std::string_view kUncertainHeading = "From memory or estimated";
constexpr std::string_view kLeftOutHeading = "What the checks leave out";
constexpr std::string_view kPartsCaption = "Parts: length × width × thickness, direction of the grain, weight of one, wood";
constexpr std::string_view kUtilisationNote = "The number beside a verdict is the share of the limit that is used: 1.00 is the "
                                              "limit itself. A warning below it has another reason, told beside it.";

} // namespace jointwright
