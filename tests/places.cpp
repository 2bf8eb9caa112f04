#include "places.hpp"

namespace jointwright::testing {

const std::string& data_folder()
{
    static const std::string folder = JOINTWRIGHT_DATA_DIR;
    return folder;
}

const std::string& program_path()
{
    static const std::string path = JOINTWRIGHT_PROGRAM;
    return path;
}

} // namespace jointwright::testing
