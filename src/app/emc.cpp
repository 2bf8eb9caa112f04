// emc: the moisture content that wood settles at in steady air.

#include "app/quick_options.hpp"
#include "app/tables.hpp"
#include "app/verbs.hpp"
#include "measure/write.hpp"
#include "wood/moisture_balance.hpp"

#include <fmt/format.h>

namespace jointwright {

Answer emc(const Arguments& arguments)
{
    std::optional<std::string> temperature_text, humidity_text;
    QuickOptions quick;
    OptionSet options("emc", "--temperature T --humidity RH [--format text|json] [--data DIR]",
                      "The moisture content that wood settles at in steady air.");
    options.value("--temperature", temperature_text, "T", "of the air: 20C, 68F");
    options.value("--humidity", humidity_text, "RH", "relative humidity in percent: 45");
    add_quick_options(options, quick, false);
    if (auto instead = options.take(arguments)) return *instead;

    ValueReader reader;
    validate(quick, reader);
    const Temperature temperature = reader.temperature("--temperature", temperature_text);
    const RelativeHumidity humidity = reader.humidity("--humidity", humidity_text);
    if (!reader.faults().empty()) return wrong_command_line(reader.faults());

    return with_facts(quick.data, [&](const Facts& facts) {
        const MoistureContent balance = equilibrium_moisture(humidity, temperature);
        QuickAnswer answer;
        answer.title =
            fmt::format("Wood in air of {} °C ({} °F) and {} relative humidity", write_number(temperature.celsius(), 3),
                        write_number(temperature.fahrenheit(), 3), write_percent(humidity.percent()));
        answer.values.push_back(
            {"emc_pct", balance.percent(), "%", "settles at a moisture content of", fmt::format("{:.1f} %", balance.percent())});
        answer.working = equilibrium_working(facts, humidity, temperature);
        answer.assumed = {"steady air, and time enough for the wood to settle",
                          "any wood: one board may differ by about a point, and drying wood stays above wetting wood"};
        return written(std::move(answer), quick);
    });
}

} // namespace jointwright
