#include "report/json/json.hpp"

#include "report/json/json_values.hpp"

#include <cmath>

namespace jointwright {

namespace {

constexpr const char* kFormat = "jointwright-report/1";

OrderedJson json_part(const PartLine& part)
{
    OrderedJson json = OrderedJson::object();
    json["id"] = part.id;
    json["copies"] = part.copies;
    json["length_m"] = json_number(part.length_m);
    json["width_m"] = json_number(part.width_m);
    json["thickness_m"] = json_number(part.thickness_m);
    json["mass_kg"] = json_number(part.mass_kg);
    return json;
}

OrderedJson json_contact(const ContactLine& contact)
{
    OrderedJson json = OrderedJson::object();
    json["between"] = json_list({contact.first, contact.second});
    json["joint"] = json_text(contact.joint);
    json["glue"] = json_text(contact.glue);
    json["area_m2"] = json_number(contact.area_m2);
    json["grain_angle_deg"] = json_number(contact.grain_angle_deg);
    return json;
}

OrderedJson json_value(const NamedValue& value)
{
    OrderedJson json = OrderedJson::object();
    json["name"] = value.name;
    json["value"] = json_number(value.value);
    json["unit"] = value.unit;
    return json;
}

OrderedJson json_edit(const DesignEdit& edit)
{
    OrderedJson json = OrderedJson::object();
    json["table"] = name_of(edit.table);
    const bool alone = edit.table == DesignEdit::Table::room || edit.table == DesignEdit::Table::piece;
    json["id"] = alone ? OrderedJson(nullptr) : OrderedJson(edit.id);
    json["key"] = edit.key;
    json["value"] = nullptr;
    if (const double* number = std::get_if<double>(&edit.value))
        json["value"] = edit.unit == DesignEdit::Unit::one && *number == std::round(*number)
                            ? OrderedJson(static_cast<long long>(*number))
                            : json_number(*number);
    if (const std::string* text = std::get_if<std::string>(&edit.value)) json["value"] = *text;
    if (const bool* truth = std::get_if<bool>(&edit.value)) json["value"] = *truth;
    if (const auto* list = std::get_if<std::vector<double>>(&edit.value)) {
        json["value"] = OrderedJson::array();
        for (const double number : *list) json["value"].push_back(json_number(number));
    }
    const auto unit = name_of(edit.unit);
    json["unit"] = unit ? OrderedJson(*unit) : OrderedJson(nullptr);
    return json;
}

OrderedJson json_edits(const std::vector<DesignEdit>& edits)
{
    OrderedJson json = OrderedJson::array();
    for (const DesignEdit& edit : edits) json.push_back(json_edit(edit));
    return json;
}

OrderedJson json_again(const CheckedAgain& again)
{
    OrderedJson json = OrderedJson::object();
    json["verdict"] = word_of(again.verdict == Verdict::cannot_tell ? Verdict::warn : again.verdict);
    json["utilisation"] = json_number(again.utilisation);
    return json;
}

OrderedJson json_tried(const TriedRemedy& remedy)
{
    OrderedJson json = OrderedJson::object();
    json["says"] = remedy.says;
    json["edit"] = json_edits(remedy.edit);
    json["share"] = json_number(remedy.share);
    json["then"] = json_again(remedy.then);
    return json;
}

OrderedJson json_step(const FirstStep& step)
{
    OrderedJson json = OrderedJson::object();
    json["check"] = step.check;
    json["subject"] = step.subject;
    json["says"] = step.says;
    json["edit"] = json_edits(step.edit);
    json["then"] = step.then ? json_again(*step.then) : OrderedJson(nullptr);
    return json;
}

OrderedJson json_finding(const Finding& finding)
{
    OrderedJson json = OrderedJson::object();
    json["check"] = finding.check;
    json["subject"] = finding.subject;
    json["verdict"] = word_of(finding.verdict);
    json["utilisation"] = json_number(finding.utilisation);
    json["headline"] = finding.headline;
    json["where"] = json_text(finding.where);
    json["remedy"] = finding.remedy ? json_text(finding.remedy.words()) : json_text(std::nullopt);
    json["tried"] = OrderedJson::array();
    for (const TriedRemedy& remedy : finding.tried) json["tried"].push_back(json_tried(remedy));
    json["values"] = OrderedJson::array();
    for (const NamedValue& value : finding.values) json["values"].push_back(json_value(value));
    json["working"] = json_working(finding.working);
    json["sources"] = json_list(finding.sources);
    return json;
}

OrderedJson json_counts(const VerdictCounts& counts)
{
    OrderedJson json = OrderedJson::object();
    json["pass"] = counts.pass;
    json["warn"] = counts.warn;
    json["fail"] = counts.fail;
    json["cannot_tell"] = counts.cannot_tell;
    return json;
}

/// Twelve months, January first, and where they come from.
void put_months(OrderedJson& room, const RoomYear& year)
{
    room["months"] = OrderedJson::array();
    for (const RoomMonth& month : year.months) {
        OrderedJson item = OrderedJson::object();
        if (month.air) {
            item["temperature_K"] = json_number(month.air->temperature.celsius() + 273.15);
            item["humidity_pct"] = json_number(month.air->humidity.percent());
        }
        item["moisture_pct"] = json_number(month.moisture.percent());
        room["months"].push_back(std::move(item));
    }
    room["months_source"] = year.source;
}

/// The opening members, up to the parts.
OrderedJson json_opening(const ReportContent& content)
{
    OrderedJson json = OrderedJson::object();
    json["format"] = kFormat;
    json["program"] = OrderedJson::object();
    json["program"]["name"] = "jointwright";
    json["program"]["version"] = content.program_version;
    if (content.date) json["date"] = *content.date;
    json["piece"] = OrderedJson::object();
    json["piece"]["name"] = content.piece_name;
    json["piece"]["use"] = content.use;
    json["piece"]["mass_kg"] = json_number(content.mass_kg);
    json["room"] = OrderedJson::object();
    json["room"]["moisture_driest_pct"] = json_number(content.moisture_driest_pct);
    json["room"]["moisture_dampest_pct"] = json_number(content.moisture_dampest_pct);
    json["room"]["moisture_at_glue_up_pct"] = json_number(content.moisture_at_glue_up_pct);
    if (content.room_year) {
        if (content.room_name) json["room"]["name"] = *content.room_name;
        put_months(json["room"], *content.room_year);
    }
    return json;
}

} // namespace

std::string write_json(const ReportContent& content)
{
    OrderedJson json = json_opening(content);
    json["parts"] = OrderedJson::array();
    for (const PartLine& part : content.parts) json["parts"].push_back(json_part(part));
    json["contacts"] = OrderedJson::array();
    for (const ContactLine& contact : content.contacts) json["contacts"].push_back(json_contact(contact));
    // The contract knows three verdicts of a whole piece.
    json["verdict"] = word_of(content.verdict == Verdict::cannot_tell ? Verdict::warn : content.verdict);
    json["counts"] = json_counts(count_verdicts(content.findings));
    json["findings"] = OrderedJson::array();
    for (const Finding& finding : content.findings) json["findings"].push_back(json_finding(finding));
    json["do_first"] = OrderedJson::array();
    for (const FirstStep& step : content.do_first) json["do_first"].push_back(json_step(step));
    json["assumed"] = json_list(content.assumed);
    json["cautions"] = json_list(content.cautions);
    return json_bytes(json);
}

} // namespace jointwright
