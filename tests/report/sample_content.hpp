#pragma once
// A small report made by hand, and names that try to break a writer.

#include "review/content/report_content.hpp"

#include <array>
#include <string>

namespace jointwright {

inline Finding sample_finding(std::string check, std::string subject, Verdict verdict, std::optional<double> utilisation,
                              std::string headline)
{
    Finding f;
    f.check = std::move(check);
    f.subject = std::move(subject);
    f.verdict = verdict;
    f.utilisation = utilisation;
    f.headline = std::move(headline);
    if (!utilisation) return f;
    f.values = {{"stress", 9.1e6, "Pa"}, {"deflection", 0.0023, "m"}};
    f.working = {
        {"Bending stress at mid-span", "σ = M/W", "M = 146 N m, W = 16000 mm3", 9.1e6, "Pa", "a book of beams, table 1"}};
    f.sources = {"a book of beams, table 1"};
    return f;
}

/// A bench with one finding of every verdict.
inline ReportContent sample_content()
{
    ReportContent content;
    content.program_version = "9.8.7";
    content.data_version = "abc123";
    content.piece_name = "Porch bench";
    content.use = "seat";
    content.units = LengthUnit::inch;
    content.mass_kg = 12.5;
    content.room_name = "heated, cold winters";
    content.moisture_driest_pct = 5.4;
    content.moisture_dampest_pct = 11.9;
    content.moisture_at_glue_up_pct = 8;
    content.parts = {{"leg", 4, 0.4318, 0.04445, 0.04445, 0.63, "white oak", "upright"},
                     {"slat", 13, 0.3048, 0.04445, 0.015875, 0.125, "black cherry", "front to back"}};
    content.joints = {{"slat", "long rail", "housing", "PVA", 26}, {"long rail", "leg", "tenon", std::nullopt, 1}};
    content.contacts = {{"slat #1", "long rail #1", "housing", "PVA", 0.00098, 90},
                        {"slat #1", "leg #2", std::nullopt, std::nullopt, 0.0007, std::nullopt}};
    content.findings = {
        sample_finding("cross-grain", "top / end rail", Verdict::fail, 2.1, "The glued top would split."),
        sample_finding("glue-suits", "top / end rail", Verdict::cannot_tell, std::nullopt, "No strength is known for that glue."),
        sample_finding("sag", "slat", Verdict::warn, 1.21, "The slat sags more than its limit."),
        sample_finding("bending", "slat", Verdict::pass, 0.24, "The slat bears a person standing on it."),
    };
    content.findings[0].where = "top #1, dampest";
    content.findings[0].remedy = "Glue the middle alone and screw the rest through slots.";
    content.verdict = overall_verdict(content.findings);
    content.assumed = {"Straight grain without knots."};
    content.cautions = {"Load it on trial before use."};
    content.cut_today = {"Slots 9/16 in long."};
    return content;
}

/// Markup, quotes, right-to-left script and overrides, escape sequences, emoji, wide and combining characters, broken UTF-8, great length.
inline const std::array<std::string, 9>& hostile_names()
{
    static const std::array<std::string, 9> names{
        "<script>alert('x')</script>",
        "\"quoted\" & 'quoted' </title><img src=x onerror=y>",
        "\u05E9\u05DC\u05D5\u05DD \u202Egnilaev\u202C \u2067x",
        "\x1b[31mred\x1b]0;title\x07\r\nline two\ttab \u009b31m",
        "\U0001FA91\U0001F468\u200D\U0001F527\u2764\uFE0F\u6905\u5B50\u6905\u5B50\u6905\u5B50\u6905\u5B50\u6905\u5B50\u6905\u5B50"
        "\u6905\u5B50\u6905\u5B50\u6905\u5B50\u6905\u5B50\u6905\u5B50\u6905\u5B50\u6905\u5B50\u6905\u5B50\u6905\u5B50\u6905\u5B50"
        "\u6905\u5B50\u6905\u5B50\u6905\u5B50",
        "broken \xff\xc3 \xed\xa0\x80 bytes \xe2\x82",
        std::string(10000, 'W'),
        std::string("a\0b", 3) + "\u0301\u0301\u0301",
        "*bold* _it_ [link](https://example.org) `code` | # www.example.org <b>",
    };
    return names;
}

/// The sample with a hostile text wherever text of a design can come through.
inline ReportContent hostile_content(const std::string& name)
{
    ReportContent content = sample_content();
    content.piece_name = content.use = name;
    content.room_name = name;
    content.parts[0].id = content.parts[1].wood = content.parts[1].grain = name;
    content.joints[0].first = content.joints[0].kind = name;
    content.joints[0].glue = name;
    content.contacts[1].first = name;
    for (Finding& f : content.findings) {
        f.subject = f.headline = name;
        f.where = name;
        f.remedy = name;
        f.sources.push_back(name);
        f.values.push_back({name, 1, name});
        f.working.push_back({name, name, name, 1, name, name});
    }
    content.assumed = content.cautions = content.cut_today = {name};
    content.date = content.data_version = name;
    return content;
}

} // namespace jointwright
