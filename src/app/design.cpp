#include "app/design.hpp"

#include "app/files.hpp"
#include "piece/read/read_design.hpp"

namespace jointwright {

std::variant<Design, Answer> open_design(const std::string& path, const Facts& facts)
{
    if (path.empty()) return wrong_command_line({fault_of("file", "the name of the design is empty")});
    auto text = read_text_file(path);
    const std::string name = name_in_messages(path);
    if (const Fault* fault = std::get_if<Fault>(&text)) return wrong_file(name, *fault);
    std::string& bytes = std::get<std::string>(text);
    DesignRead read = read_design(bytes, facts);
    if (!read.piece || !read.faults.empty())
        return Answer{ExitStatus::wrong_input, {}, write_faults(read.faults, name, bytes), {}};
    return Design{std::move(bytes), std::move(*read.piece)};
}

Fault missing_design(const std::string& verb)
{
    return fault_of("missing-argument", verb + " needs a design file", "jointwright " + verb + " my-bench.toml",
                    "\"jointwright new\" lists starter designs");
}

} // namespace jointwright
