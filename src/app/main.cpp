// The program: asks a verb and puts what it answers where it belongs.

#include "app/files.hpp"
#include "app/streams.hpp"
#include "app/verbs.hpp"
#include "report/words/safe_text.hpp"

#include <fmt/format.h>

#include <unistd.h>

namespace {

using namespace jointwright;

void complain(const std::string& message)
{
    // Nowhere is left to tell when this fails; the exit status still says it.
    static_cast<void>(write_all(STDERR_FILENO, message));
}

/// Writes a file whole or complains; the status that the program would end with.
ExitStatus deliver_file(const std::string& path, const std::string& text)
{
    const FileWritten written = write_file(path, text);
    if (written.status != ExitStatus::fine)
        complain(fmt::format("{}: error: the file cannot be written: {} [file]\n", safe_text(path), written.why));
    return written.status;
}

/// Writes the results; the status that the program ends with.
ExitStatus deliver(const Answer& answer)
{
    for (const SideFile& file : answer.files)
        if (const ExitStatus status = deliver_file(file.path, file.text); status != ExitStatus::fine) return status;
    if (!answer.target || *answer.target == "-") {
        const std::error_code error = write_all(STDOUT_FILENO, answer.output);
        if (!error) return answer.status;
        complain(fmt::format("jointwright: error: standard output cannot be written: {} [file]\n", why_not(error.value())));
        return ExitStatus::broken;
    }
    const ExitStatus status = deliver_file(*answer.target, answer.output);
    return status == ExitStatus::fine ? answer.status : status;
}

} // namespace

int main(int count, char** words)
{
    prepare_streams();
    const Answer answer = answer_to(count > 1 ? Arguments(words + 1, words + count) : Arguments());
    if (!answer.messages.empty()) complain(answer.messages);
    const bool nothing_to_write = answer.output.empty() && answer.status >= ExitStatus::wrong_input;
    return static_cast<int>(nothing_to_write ? answer.status : deliver(answer));
}
