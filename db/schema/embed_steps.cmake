# SPDX-License-Identifier: GPL-3.0-or-later
# Writes OUTPUT, a C++ source with the text of each numbered step in STEPS, in order of their file names.
list(SORT STEPS)
set(TEXT "#include \"db/schema/schema_steps.h\"\n\nnamespace holdfast::db {\n\n")
string(APPEND TEXT "std::span<const char* const> schemaSteps() {\n    static constexpr const char* steps[] = {\n")
foreach(STEP IN LISTS STEPS)
  file(READ "${STEP}" SQL)
  # A string literal may hold 64 KiB at most on some compilers; a step stays far below.
  string(APPEND TEXT "R\"sql(${SQL})sql\",\n")
endforeach()
string(APPEND TEXT "    };\n    return steps;\n}\n\n} // namespace holdfast::db\n")
file(WRITE "${OUTPUT}" "${TEXT}")
