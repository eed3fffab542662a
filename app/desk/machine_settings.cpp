// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/machine_settings.h"

#include "app/theme/text_share.h"

#include <QScreen>
#include <QSettings>
#include <QStandardPaths>

#include <algorithm>
#include <array>

namespace holdfast::app {

namespace {

constexpr QSize kUsualSize{1366, 768};
constexpr int kTitleBar = 40; // a window manager adds about as much above
constexpr std::array kTextSizes{80, 90, 100, 110, 125, 140, 160};
constexpr const char* kScale = "QT_SCALE_FACTOR";

const QString kWindowKey = QStringLiteral("window");
const QString kTextKey = QStringLiteral("textPercent");
const QString kPrefixKey = QStringLiteral("scannerPrefix");

QSettings machineFile() {
    return QSettings(QStandardPaths::writableLocation(QStandardPaths::AppConfigLocation) +
                         QStringLiteral("/machine.ini"),
                     QSettings::IniFormat);
}

// What QT_SCALE_FACTOR was before.
QByteArray& scaleBefore() {
    static QByteArray before;
    return before;
}

} // namespace

void showWhereItWas(QWidget& window) {
    const QSettings file = machineFile();
    if (window.restoreGeometry(file.value(kWindowKey).toByteArray())) {
        window.show();
        return;
    }
    const QRect free = window.screen()->availableGeometry();
    if (kUsualSize.width() > free.width() || kUsualSize.height() + kTitleBar > free.height()) {
        window.resize(free.size().boundedTo(kUsualSize) - QSize(0, kTitleBar));
        window.showMaximized();
        return;
    }
    window.resize(kUsualSize);
    window.show();
}

void keepWhereItIs(const QWidget& window) {
    QSettings file = machineFile();
    file.setValue(kWindowKey, window.saveGeometry());
}

int textSize() {
    const int kept = machineFile().value(kTextKey, kUsualTextSize).toInt();
    return std::ranges::find(kTextSizes, kept) != kTextSizes.end() ? kept : kUsualTextSize;
}

void keepTextSize(int percent) {
    QSettings file = machineFile();
    file.setValue(kTextKey, percent);
    file.sync();
}

int nextTextSize(int percent, int steps) {
    const auto at = std::ranges::find(kTextSizes, percent) - kTextSizes.begin();
    const auto next = std::clamp<std::ptrdiff_t>(at + steps, 0, std::ssize(kTextSizes) - 1);
    return kTextSizes[static_cast<std::size_t>(next)];
}

QString scannerPrefix() {
    return machineFile().value(kPrefixKey).toString().left(kLongestPrefix);
}

void keepScannerPrefix(const QString& prefix) {
    QSettings file = machineFile();
    file.setValue(kPrefixKey, prefix);
}

const QString kLabelPrinterSetting = QStringLiteral("printerForLabels");
const QString kSheetPrinterSetting = QStringLiteral("printerForSheets");
const QString kLoudnessSetting = QStringLiteral("loudness");
const QString kBackupFolderSetting = QStringLiteral("backupFolder");

QString machineSetting(const QString& name) {
    return machineFile().value(name).toString();
}

void keepMachineSetting(const QString& name, const QString& text) {
    QSettings file = machineFile();
    if (text.isEmpty())
        file.remove(name);
    else
        file.setValue(name, text);
}

void applyTextSize() {
    scaleBefore() = qgetenv(kScale);
    const int percent = textSize();
    if (percent == kUsualTextSize)
        return;
    bool isNumber = false;
    const double before = scaleBefore().toDouble(&isNumber);
    const double scale = (isNumber ? before : 1.0) * percent / 100.0;
    qputenv(kScale, QByteArray::number(std::max(scale, 1.0)));
    setTextShare(scale);
}

void forgetTextSize() {
    if (scaleBefore().isEmpty())
        qunsetenv(kScale);
    else
        qputenv(kScale, scaleBefore());
}

} // namespace holdfast::app
