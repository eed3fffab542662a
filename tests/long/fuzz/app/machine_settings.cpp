// SPDX-License-Identifier: GPL-3.0-or-later
// What this computer keeps for itself, in a file that anybody may have written to.
#include "app/desk/machine_settings.h"

#include "tests/long/fuzz/fuzz_target.h"

#include <QDir>
#include <QFile>
#include <QStandardPaths>
#include <QTemporaryDir>

namespace holdfast::fuzz {
namespace {

// A folder of its own for each input: what was read of a file is remembered.
void readMachineFile(std::string_view input) {
    const QByteArray before = qgetenv("XDG_CONFIG_HOME");
    {
        const QTemporaryDir home(QStringLiteral("/dev/shm/holdfast-settings-XXXXXX"));
        qputenv("XDG_CONFIG_HOME", home.path().toUtf8());
        const QString folder = QStandardPaths::writableLocation(QStandardPaths::AppConfigLocation);
        QDir().mkpath(folder);
        QFile file(folder + QStringLiteral("/machine.ini"));
        if (file.open(QIODevice::WriteOnly))
            file.write(input.data(), static_cast<qint64>(input.size()));
        file.close();
        const int size = app::textSize();
        require(size >= 80 && size <= 160, "the text has a size that can be chosen");
        require(app::scannerPrefix().size() <= app::kLongestPrefix, "the prefix has its length");
        for (const QString& name :
             {app::kLabelPrinterSetting, app::kSheetPrinterSetting, app::kLoudnessSetting})
            (void)app::machineSetting(name);
    }
    if (before.isEmpty())
        qunsetenv("XDG_CONFIG_HOME");
    else
        qputenv("XDG_CONFIG_HOME", before);
}

const Registered registeredMachine{"machine_settings", readMachineFile};

} // namespace
} // namespace holdfast::fuzz
