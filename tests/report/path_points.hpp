#pragma once
// The corners of the paths of a drawing, followed step by step as a browser does.

#include "report/drawings/lines.hpp"

#include <cctype>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace drawn {

/// Every place that the data of a path leads to: commands M, m, L, l, h, v, z.
inline std::vector<jointwright::drawing::Dot> points_of_path(std::string_view data)
{
    std::vector<jointwright::drawing::Dot> points;
    jointwright::drawing::Dot at, start;
    char command = 0;
    std::size_t i = 0;
    const auto skip = [&] {
        while (i < data.size() && (data[i] == ' ' || data[i] == ',')) ++i;
    };
    const auto number = [&] {
        skip();
        std::size_t used = 0;
        // A second point ends a number: "1.5.2" is 1.5 and 0.2.
        std::string text;
        for (std::size_t k = i; k < data.size(); ++k) {
            const char c = data[k];
            const bool sign = c == '-' && text.empty(), point = c == '.' && text.find('.') == std::string::npos;
            if (!sign && !point && !std::isdigit(static_cast<unsigned char>(c))) break;
            text += c;
        }
        const double value = std::stod(text, &used);
        i += text.size();
        return value;
    };
    for (skip(); i < data.size(); skip()) {
        if (std::isalpha(static_cast<unsigned char>(data[i]))) command = data[i++];
        switch (command) {
        case 'M': at.x = number(), at.y = number(), start = at, command = 'L'; break;
        case 'm': at.x += number(), at.y += number(), start = at, command = 'l'; break;
        case 'L': at.x = number(), at.y = number(); break;
        case 'l': at.x += number(), at.y += number(); break;
        case 'h': at.x += number(); break;
        case 'v': at.y += number(); break;
        case 'z':
        case 'Z': at = start; break;
        default: throw std::logic_error("a command that paths do not use");
        }
        points.push_back(at);
    }
    return points;
}

/// Those of all paths in a piece of markup.
inline std::vector<jointwright::drawing::Dot> points_of_paths(const std::string& markup)
{
    std::vector<jointwright::drawing::Dot> points;
    for (std::size_t at = markup.find(" d=\""); at != std::string::npos; at = markup.find(" d=\"", at + 1)) {
        const std::size_t from = at + 4;
        for (const auto& p : points_of_path(std::string_view(markup).substr(from, markup.find('"', from) - from)))
            points.push_back(p);
    }
    return points;
}

} // namespace drawn
