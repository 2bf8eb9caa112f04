# Writes a C++ file that holds every text of the data folder as a raw string.
# cmake -DDATA=... -DOUT=... -P embed.cmake
file(GLOB_RECURSE paths RELATIVE "${DATA}" "${DATA}/*.toml" "${DATA}/*.md" "${DATA}/*.json" "${DATA}/*.html" "${DATA}/*.css")
list(SORT paths)
set(body "")
foreach(path IN LISTS paths)
  file(READ "${DATA}/${path}" text)
  string(APPEND body "    {R\"jw(${path})jw\", R\"jw(${text})jw\"},\n")
endforeach()
file(WRITE "${OUT}.new" "// Made from data/ when the program is built; do not edit.
#include \"facts/facts.hpp\"

namespace jointwright {

const DataTexts& embedded_data()
{
    static const DataTexts texts = {
${body}    };
    return texts;
}

} // namespace jointwright
")
file(RENAME "${OUT}.new" "${OUT}")
