// A program of one's own on the installed engine: reads a design, checks it, and prints the verdict and the report as JSON.
//   check_a_design DESIGN.toml
#include <jointwright/jointwright.hpp>

#include <fstream>
#include <iostream>
#include <sstream>

int main(int count, char** words)
{
    namespace engine = jointwright::engine;
    if (count != 2) {
        std::cerr << "usage: check_a_design DESIGN.toml\n";
        return 2;
    }
    std::ifstream file(words[1], std::ios::binary);
    if (!file) {
        std::cerr << words[1] << ": cannot be read\n";
        return 2;
    }
    std::ostringstream text;
    text << file.rdbuf();

    const engine::Tables tables;
    const engine::Read read = engine::read(text.str(), tables);
    if (!read) {
        std::cerr << read.messages(words[1]);
        return 2;
    }
    const auto report = engine::check(*read.design, tables, {.remedies_tried = false});
    std::cerr << engine::verdict(*report) << '\n';
    std::cout << engine::write(report, engine::Format::json);
    return engine::verdict(*report) == "fail" ? 1 : 0;
}
