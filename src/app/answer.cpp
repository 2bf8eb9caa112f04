#include "app/answer.hpp"

#include "report/words/safe_text.hpp"

namespace jointwright {

Answer results(std::string output) { return {ExitStatus::fine, std::move(output), {}, {}}; }

Answer wrong_command_line(const Faults& faults)
{
    return {ExitStatus::wrong_input, {}, write_faults(faults, "jointwright", {}), {}};
}

Answer wrong_file(const std::string& file, const Fault& fault)
{
    return {ExitStatus::wrong_input, {}, write_faults({fault}, safe_text(file), {}), {}};
}

Fault fault_of(std::string id, std::string says, std::string fix, std::string note)
{
    return {Spot{}, std::move(id), std::move(says), std::move(fix), std::move(note)};
}

} // namespace jointwright
