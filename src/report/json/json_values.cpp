#include "report/json/json_values.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>

namespace jointwright {

OrderedJson json_number(double number)
{
    if (!std::isfinite(number)) return nullptr;
    const std::string digits = fmt::format("{:.12g}", number);
    double rounded = 0;
    const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), rounded);
    // The very largest numbers round up to infinity.
    if (read.ec != std::errc{}) return number;
    return rounded == 0 ? 0.0 : rounded;
}

OrderedJson json_number(const std::optional<double>& number) { return number ? json_number(*number) : OrderedJson(nullptr); }

OrderedJson json_text(const std::optional<std::string>& text) { return text ? OrderedJson(*text) : OrderedJson(nullptr); }

OrderedJson json_list(const std::vector<std::string>& texts)
{
    OrderedJson list = OrderedJson::array();
    for (const std::string& text : texts) list.push_back(text);
    return list;
}

OrderedJson json_working(const Working& working)
{
    OrderedJson steps = OrderedJson::array();
    for (const WorkingStep& step : working) {
        OrderedJson one = OrderedJson::object();
        one["says"] = step.says;
        one["formula"] = step.formula;
        one["with"] = step.with;
        one["value"] = json_number(step.value);
        one["unit"] = step.unit;
        one["source"] = step.source;
        steps.push_back(std::move(one));
    }
    return steps;
}

std::string json_bytes(const OrderedJson& json)
{
    constexpr int kIndent = 2;
    return json.dump(kIndent, ' ', false, OrderedJson::error_handler_t::replace) + '\n';
}

} // namespace jointwright
