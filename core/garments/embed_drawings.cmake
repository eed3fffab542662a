# SPDX-License-Identifier: GPL-3.0-or-later
# Writes OUTPUT, a C++ source with the text of each drawing in DRAWINGS, by the name of its file.
list(SORT DRAWINGS)
set(TEXT "#include \"core/garments/garment_drawings.h\"\n\nnamespace holdfast {\n\n")
string(APPEND TEXT "std::span<const GarmentDrawing> garmentDrawings() {\n    static constexpr GarmentDrawing drawings[] = {\n")
foreach(DRAWING IN LISTS DRAWINGS)
  file(READ "${DRAWING}" SVG)
  get_filename_component(NAME "${DRAWING}" NAME_WE)
  string(APPEND TEXT "{\"${NAME}\", R\"svg(${SVG})svg\"},\n")
endforeach()
string(APPEND TEXT "    };\n    return drawings;\n}\n\n} // namespace holdfast\n")
file(WRITE "${OUTPUT}" "${TEXT}")
