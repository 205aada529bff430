# rangebook_embed(TARGET FILES...): compiles text files (reference tables, migrations) into TARGET,
# where schema/embedded.h finds them by their path below schema/.
function(rangebook_embed target)
  # `sv` knows the length of a text; counting it takes clang more steps than it allows.
  set(body "// Generated from the tables and migrations in schema/. Do not edit.\n#include \"schema/embedded.h\"\nnamespace rangebook {\nnamespace {\nusing std::string_view_literals::operator\"\"sv;\nconstexpr EmbeddedFile kFiles[] = {\n")
  foreach(file ${ARGN})
    set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${file})
    file(READ ${file} text)
    file(RELATIVE_PATH name ${PROJECT_SOURCE_DIR}/schema ${file})
    string(APPEND body "{\"${name}\", R\"~~~~(${text})~~~~\"sv},\n")
  endforeach()
  string(APPEND body "};\n}  // namespace\nstd::span<const EmbeddedFile> embedded_files() { return kFiles; }\n}  // namespace rangebook\n")
  set(out ${CMAKE_CURRENT_BINARY_DIR}/embedded_files.cc)
  file(GENERATE OUTPUT ${out} CONTENT "${body}")
  # Tables are longer than the 64 KiB every compiler has to take; gcc and clang take more.
  set_source_files_properties(${out} PROPERTIES COMPILE_OPTIONS -Wno-overlength-strings)
  target_sources(${target} PRIVATE ${out})
endfunction()
