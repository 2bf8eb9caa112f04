#include "report/text/quick.hpp"

#include "measure/write.hpp"
#include "report/json/json_values.hpp"
#include "report/text/text_page.hpp"
#include "report/words/people.hpp"

#include <fmt/format.h>

namespace jointwright {

namespace {

OrderedJson json_row(const QuickRow& row)
{
    OrderedJson json = OrderedJson::object();
    json["name"] = row.name;
    json["value"] = json_number(row.value);
    json["unit"] = row.unit;
    json["moisture_pct"] = json_number(row.moisture_pct);
    json["source"] = row.source;
    json["provenance"] = row.provenance;
    return json;
}

struct ToJson {
    OrderedJson operator()(double number) const { return json_number(number); }
    OrderedJson operator()(const std::string& text) const { return text; }
    OrderedJson operator()(const std::vector<std::string>& texts) const { return json_list(texts); }
    OrderedJson operator()(const std::vector<QuickRow>& rows) const
    {
        OrderedJson list = OrderedJson::array();
        for (const QuickRow& row : rows) list.push_back(json_row(row));
        return list;
    }
    OrderedJson operator()(const std::vector<double>& numbers) const
    {
        OrderedJson list = OrderedJson::array();
        for (const double number : numbers) list.push_back(json_number(number));
        return list;
    }
};

/// "tangential: 0.00369 1/% at 12 % (source, retrieved)".
std::string row_words(const QuickRow& row, LengthUnit units)
{
    const std::string value = row.value ? value_words(*row.value, row.unit, units) : "none in the tables";
    const std::string at = row.moisture_pct ? " at " + write_percent(*row.moisture_pct) : "";
    const std::string from =
        row.source.empty() ? "" : fmt::format("; {}{}{}", row.source, row.provenance.empty() ? "" : ", ", row.provenance);
    return fmt::format("{}: {}{}{}", label_words(row.name), value, at, from);
}

struct ToText {
    TextPage& page;
    const QuickValue& value;
    LengthUnit units;

    void line(std::string_view words) const
    {
        page.paragraph(fmt::format("{}: {}", value.says.empty() ? label_words(value.name) : value.says,
                                   value.people.empty() ? words : value.people),
                       {}, 2);
    }
    void operator()(double number) const { line(value_words(number, value.unit, units)); }
    void operator()(const std::string& text) const { line(text); }
    void operator()(const std::vector<std::string>& texts) const { line(fmt::format("{}", fmt::join(texts, ", "))); }
    void operator()(const std::vector<double>& numbers) const
    {
        std::string words;
        for (const double number : numbers) words += (words.empty() ? "" : ", ") + value_words(number, value.unit, units);
        line(words);
    }
    void operator()(const std::vector<QuickRow>& rows) const
    {
        for (const QuickRow& row : rows) page.paragraph(row_words(row, units), {}, 2);
    }
};

void write_list(TextPage& page, std::string_view heading, const std::vector<std::string>& lines)
{
    if (lines.empty()) return;
    page.blank();
    page.paragraph(fmt::format("{}:", heading));
    for (const std::string& line : lines) page.paragraph(line, plain_lead("* "));
}

} // namespace

std::string write_quick_text(const QuickAnswer& answer, const TextOptions& options)
{
    TextPage page(options);
    page.paragraph(answer.title);
    page.blank();
    for (const QuickValue& value : answer.values) std::visit(ToText{page, value, answer.units}, value.content);
    if (options.working && !answer.working.empty()) {
        page.blank();
        page.paragraph("Working:");
        write_working(page, answer.working, answer.units, 0);
    }
    write_list(page, kAssumedHeading, answer.assumed);
    write_list(page, "Sources", answer.sources);
    return page.take();
}

std::string write_quick_json(const QuickAnswer& answer)
{
    OrderedJson json = OrderedJson::object();
    for (const QuickValue& value : answer.values) json[value.name] = std::visit(ToJson{}, value.content);
    json["working"] = json_working(answer.working);
    json["sources"] = json_list(answer.sources);
    json["assumed"] = json_list(answer.assumed);
    return json_bytes(json);
}

} // namespace jointwright
