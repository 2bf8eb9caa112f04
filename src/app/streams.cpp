#include "app/streams.hpp"

#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <fcntl.h>
#include <unistd.h>

namespace jointwright {

void prepare_streams()
{
    std::signal(SIGPIPE, SIG_IGN);
    std::signal(SIGXFSZ, SIG_IGN); // the shell's limit on file sizes
    for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
        if (fcntl(stream, F_GETFD) != -1 || errno != EBADF) continue;
        // Opened the wrong way round on purpose: a read from closed input, or a write to closed output, must still fail. Messages may get lost.
        const int way = stream == STDIN_FILENO || stream == STDERR_FILENO ? O_WRONLY : O_RDONLY;
        if (open("/dev/null", way) < 0) return;
    }
}

std::error_code write_all(int descriptor, std::string_view text)
{
    while (!text.empty()) {
        const ssize_t written = write(descriptor, text.data(), text.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return {errno, std::generic_category()};
        text.remove_prefix(static_cast<std::size_t>(written));
    }
    return {};
}

std::string why_not(int error)
{
    switch (error) {
    case ENOENT: return "there is no such file or folder";
    case EACCES:
    case EPERM: return "permission denied";
    case EISDIR: return "it is a folder";
    case ENOSPC: return "the disk is full";
    case EROFS: return "the disk is read-only";
    case EPIPE: return "the other end of the pipe was closed";
    case EBADF: return "it is closed";
    case EFBIG: return "it would be larger than files may be here";
    default: return std::generic_category().message(error);
    }
}

bool terminal_takes_colour()
{
    const char* no_colour = std::getenv("NO_COLOR");
    const char* terminal = std::getenv("TERM");
    if (terminal == nullptr || *terminal == '\0' || std::string_view(terminal) == "dumb") return false;
    return isatty(STDOUT_FILENO) == 1 && (no_colour == nullptr || *no_colour == '\0');
}

} // namespace jointwright
