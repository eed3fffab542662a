# SPDX-License-Identifier: GPL-3.0-or-later
# SQLite as the shop file needs it. A build of SQLite may lack what the journal and the search are made of, which would
# else be found out when the program is linked or a shop is opened.
set(SQLITE_NEEDED 3.40)
set(SQLITE_ADVICE "On Debian 12 or later: apt-get install libsqlite3-dev. Elsewhere build SQLite ${SQLITE_NEEDED} or later "
                  "with -DSQLITE_ENABLE_SESSION -DSQLITE_ENABLE_PREUPDATE_HOOK -DSQLITE_ENABLE_FTS5.")
find_package(SQLite3 ${SQLITE_NEEDED})
if(NOT SQLite3_FOUND)
  message(FATAL_ERROR "Holdfast needs SQLite ${SQLITE_NEEDED} or later. " ${SQLITE_ADVICE})
endif()

include(CheckCXXSourceCompiles)
set(CMAKE_REQUIRED_LIBRARIES SQLite::SQLite3)
set(CMAKE_REQUIRED_DEFINITIONS -DSQLITE_ENABLE_SESSION -DSQLITE_ENABLE_PREUPDATE_HOOK)
check_cxx_source_compiles("#include <sqlite3.h>
void (*volatile used[])() = {reinterpret_cast<void (*)()>(sqlite3session_create),
                             reinterpret_cast<void (*)()>(sqlite3_preupdate_hook)};
int main() { return used[0] == used[1]; }" HOLDFAST_SQLITE_SESSIONS)
if(NOT HOLDFAST_SQLITE_SESSIONS)
  message(FATAL_ERROR "This SQLite was built without sessions, of which the journal of the shop is made. " ${SQLITE_ADVICE})
endif()

# Whether it has the full-text search shows only when it runs.
if(NOT CMAKE_CROSSCOMPILING)
  include(CheckCXXSourceRuns)
  check_cxx_source_runs("#include <sqlite3.h>
int main() { return sqlite3_compileoption_used(\"ENABLE_FTS5\") ? 0 : 1; }" HOLDFAST_SQLITE_SEARCH)
  if(NOT HOLDFAST_SQLITE_SEARCH)
    message(FATAL_ERROR "This SQLite was built without FTS5, which searches the orders. " ${SQLITE_ADVICE})
  endif()
endif()
unset(CMAKE_REQUIRED_LIBRARIES)
unset(CMAKE_REQUIRED_DEFINITIONS)
