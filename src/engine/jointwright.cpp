#include "engine/jointwright.hpp"

#include "facts/facts.hpp"
#include "piece/read/read_design.hpp"
#include "report/json/json.hpp"
#include "report/page/html.hpp"
#include "report/text/markdown.hpp"
#include "report/text/text.hpp"
#include "report/words/compose.hpp"
#include "review/review.hpp"

#include <utility>

namespace jointwright::engine {

struct Tables::Held {
    Facts facts;
};

class Design {
public:
    std::string text;
    Piece piece;
};

class Report {
public:
    ReportContent content;
};

namespace {

/// Faults of the tables as the caller knows them.
template <class Make>
auto with_own_fault(const Make& make)
{
    try {
        return make();
    } catch (const BrokenData& broken) {
        throw WrongTables(broken.what());
    }
}

DataTexts data_texts(std::map<std::string, std::string> texts)
{
    DataTexts all;
    for (auto& [path, text] : texts) all.emplace(path, std::move(text));
    return all;
}

std::optional<LengthUnit> length_unit(Lengths lengths)
{
    switch (lengths) {
    case Lengths::as_design: return std::nullopt;
    case Lengths::inches: return LengthUnit::inch;
    case Lengths::millimetres: return LengthUnit::millimetre;
    }
    return std::nullopt;
}

} // namespace

Tables::Tables() : held_(with_own_fault([] { return std::make_unique<Held>(Held{Facts(embedded_data())}); })) {}
Tables::Tables(std::map<std::string, std::string> texts)
    : held_(with_own_fault([&] { return std::make_unique<Held>(Held{Facts(data_texts(std::move(texts)))}); }))
{
}
Tables::~Tables() = default;
Tables::Tables(Tables&&) noexcept = default;
Tables& Tables::operator=(Tables&&) noexcept = default;

std::string Tables::fingerprint() const { return held_->facts.fingerprint(); }

std::string Read::messages(const std::string& file_name) const
{
    Faults faults;
    for (const Problem& p : problems) faults.push_back({{p.line, p.column, p.width}, p.id, p.sentence, p.fix, p.note});
    return faults.empty() ? std::string{} : write_faults(faults, file_name, text);
}

Read read(std::string_view text, const Tables& tables)
{
    return with_own_fault([&] {
        Read result;
        result.text = std::string(text);
        DesignRead design = read_design(result.text, tables.held().facts);
        for (Fault& f : design.faults)
            result.problems.push_back({f.spot.line, f.spot.column, f.spot.width, std::move(f.id), std::move(f.says),
                                       std::move(f.fix), std::move(f.note)});
        if (design.piece) result.design = std::make_shared<const Design>(Design{result.text, *std::move(design.piece)});
        return result;
    });
}

std::shared_ptr<const Report> check(const Design& design, const Tables& tables, const CheckSettings& settings)
{
    return with_own_fault([&] {
        const Facts& facts = tables.held().facts;
        CheckOptions options;
        options.units = length_unit(settings.lengths);
        options.drawn = settings.drawn;
        options.remedies_tried = settings.remedies_tried;
        options.text = design.text;
        auto report = std::make_shared<Report>();
        report->content = check_piece(design.piece, facts, options);
        add_cautions(report->content, design.piece, facts);
        return std::shared_ptr<const Report>(std::move(report));
    });
}

std::string_view verdict(const Report& report) { return word_of(report.content.verdict); }

std::string write(const Report& report, Format format, bool working)
{
    switch (format) {
    case Format::text: return write_text(report.content, {false, working});
    case Format::json: return write_json(report.content);
    case Format::html: return write_html(report.content, working);
    case Format::markdown: return write_markdown(report.content, working);
    }
    return {};
}

std::string_view version() { return JOINTWRIGHT_VERSION; }

} // namespace jointwright::engine
