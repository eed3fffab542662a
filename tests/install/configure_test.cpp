// SPDX-License-Identifier: GPL-3.0-or-later
// A machine whose SQLite cannot do what the shop file needs is told so when the build is prepared.

#include "tests/install/installed.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QTemporaryDir>

namespace holdfast::install_test {
namespace {

class Configure : public testing::Test {
protected:
    // With the SQLite of this folder: its header says `version`, its library has these functions.
    Ran prepare(const char* version, const char* functions) {
        write("sqlite3.h",
              QByteArray("#define SQLITE_VERSION \"") + version +
                  "\"\n#ifdef __cplusplus\nextern \"C\" {\n#endif\n"
                  "int sqlite3_compileoption_used(const char*);\nvoid sqlite3session_create(void);\n"
                  "void sqlite3_preupdate_hook(void);\n#ifdef __cplusplus\n}\n#endif\n");
        write("sqlite.c", functions);
        const Ran made = run(QStringLiteral("cc"),
                             {QStringLiteral("-shared"), QStringLiteral("-fPIC"), QStringLiteral("-o"),
                              QStringLiteral("libsqlite3.so"), QStringLiteral("sqlite.c")},
                             folder.path());
        EXPECT_EQ(made.status, 0) << made.out.toStdString();
        Ran ran =
            run(QStringLiteral(CMAKE_PROGRAM),
                {QStringLiteral("-S"), QStringLiteral(HOLDFAST_SOURCE_DIR), QStringLiteral("-B"),
                 folder.filePath(QStringLiteral("build")), QStringLiteral("-DHOLDFAST_APP=OFF"),
                 QStringLiteral("-DSQLite3_INCLUDE_DIR=") + folder.path(),
                 QStringLiteral("-DSQLite3_LIBRARY=") + folder.filePath(QStringLiteral("libsqlite3.so"))});
        ran.out = ran.out.simplified(); // CMake breaks its lines
        return ran;
    }

    void write(const char* name, const QByteArray& text) {
        QFile file(folder.filePath(QString::fromLatin1(name)));
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(text);
    }

    QTemporaryDir folder;
};

constexpr const char* kSessions =
    "void sqlite3session_create(void) {}\nvoid sqlite3_preupdate_hook(void) {}\n";

TEST_F(Configure, OldSqliteIsNamedWithWhatToInstall) {
    const Ran ran = prepare("3.34.1", kSessions);
    EXPECT_NE(ran.status, 0);
    EXPECT_TRUE(ran.out.contains(QStringLiteral("Holdfast needs SQLite 3.40 or later.")))
        << ran.out.toStdString();
    EXPECT_TRUE(ran.out.contains(QStringLiteral("apt-get install libsqlite3-dev"))) << ran.out.toStdString();
}

TEST_F(Configure, SqliteWithoutSessionsIsNamed) {
    const Ran ran =
        prepare("3.40.1", "int sqlite3_compileoption_used(const char* name) { return name != 0; }\n");
    EXPECT_NE(ran.status, 0);
    EXPECT_TRUE(ran.out.contains(QStringLiteral("This SQLite was built without sessions")))
        << ran.out.toStdString();
}

TEST_F(Configure, SqliteWithoutSearchIsNamed) {
    const std::string functions =
        std::string(kSessions) + "int sqlite3_compileoption_used(const char* name) { return name == 0; }\n";
    const Ran ran = prepare("3.40.1", functions.c_str());
    EXPECT_NE(ran.status, 0);
    EXPECT_TRUE(ran.out.contains(QStringLiteral("This SQLite was built without FTS5")))
        << ran.out.toStdString();
}

} // namespace
} // namespace holdfast::install_test
