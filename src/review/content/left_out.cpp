#include "review/content/left_out.hpp"

#include <algorithm>
#include <sstream>

namespace jointwright {

namespace {

constexpr std::string_view kSection = "## What it leaves out";

void add_words(std::string& point, std::string_view line)
{
    if (!point.empty()) point += ' ';
    for (const char c : line)
        if (c != '`') point += c;
}

} // namespace

std::vector<std::string> points_left_out(std::string_view text)
{
    constexpr std::string_view kCommand = "jointwright checks "; // a reader of the report looks further down instead
    std::vector<std::string> points;
    std::istringstream lines{std::string(text)};
    bool within = false, fresh = true; // fresh: the next line begins a point
    for (std::string line; std::getline(lines, line);) {
        if (line.rfind("## ", 0) == 0) {
            within = line == kSection;
            fresh = true;
            continue;
        }
        if (!within) continue;
        if (line.empty()) {
            fresh = true;
            continue;
        }
        const bool listed = line.rfind("* ", 0) == 0;
        if (listed || fresh) points.emplace_back();
        fresh = false;
        add_words(points.back(), std::string_view(line).substr(listed ? 2 : 0));
    }
    for (std::string& point : points)
        for (std::size_t at = point.find(kCommand); at != std::string::npos; at = point.find(kCommand))
            point.erase(at, kCommand.size());
    return points;
}

std::vector<LeftOut> left_out_by(const Facts& facts, const std::vector<Finding>& findings)
{
    std::vector<LeftOut> all;
    for (const Finding& f : findings) {
        if (std::any_of(all.begin(), all.end(), [&](const LeftOut& known) { return known.check == f.check; })) continue;
        const std::string* text = facts.text("checks/" + f.check + ".md");
        if (!text) continue;
        std::vector<std::string> points = points_left_out(*text);
        if (!points.empty()) all.push_back({f.check, std::move(points)});
    }
    return all;
}

} // namespace jointwright
