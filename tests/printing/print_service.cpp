// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/printing/print_service.h"

#include <QDeadlineTimer>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QProcess>
#include <QThread>

#include <cmath>

namespace holdfast::app::test {

namespace {

constexpr int kWaitedFor = 20'000; // ms
PrintService* theService = nullptr;

void writeFile(const QString& path, const QString& text) {
    QFile file(path);
    if (file.open(QIODevice::WriteOnly))
        file.write(text.toUtf8());
    file.setPermissions(QFile::ReadOwner | QFile::WriteOwner | QFile::ReadGroup | QFile::ReadOther);
}

QString textOf(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

int pointsOf(double millimetres) {
    return static_cast<int>(std::lround(millimetres / 25.4 * 72));
}

QString nameOf(const QueuePage& page) {
    return QStringLiteral("w%1h%2").arg(pointsOf(page.width)).arg(pointsOf(page.height));
}

// Adobe's PostScript Printer Description File Format 4.3 with CUPS's keys: a printer that takes PDF and has
// these pages, 1.5 mm of which stay white.
QString descriptionOf(const QString& name, const std::vector<QueuePage>& pages) {
    const QString usual = nameOf(pages.front());
    QString text =
        QStringLiteral(
            "*PPD-Adobe: \"4.3\"\n*FormatVersion: \"4.3\"\n*FileVersion: \"1.0\"\n"
            "*LanguageVersion: English\n*LanguageEncoding: ISOLatin1\n*PCFileName: \"TEST.PPD\"\n"
            "*Manufacturer: \"Test\"\n*Product: \"(Test)\"\n*ModelName: \"%1\"\n"
            "*ShortNickName: \"%1\"\n*NickName: \"%1\"\n*PSVersion: \"(3010.000) 0\"\n"
            "*LanguageLevel: \"3\"\n*ColorDevice: False\n*DefaultColorSpace: Gray\n"
            "*FileSystem: False\n*cupsVersion: 2.4\n*cupsFilter: \"application/vnd.cups-pdf 0 -\"\n")
            .arg(name);
    for (const QString& option : {QStringLiteral("PageSize"), QStringLiteral("PageRegion")}) {
        text += QStringLiteral("*OpenUI *%1: PickOne\n*OrderDependency: 10 AnySetup *%1\n*Default%1: %2\n")
                    .arg(option, usual);
        for (const QueuePage& page : pages)
            text += QStringLiteral("*%1 %2/%2: \"<</PageSize[%3 %4]>>setpagedevice\"\n")
                        .arg(option, nameOf(page))
                        .arg(pointsOf(page.width))
                        .arg(pointsOf(page.height));
        text += QStringLiteral("*CloseUI: *%1\n").arg(option);
    }
    text += QStringLiteral("*DefaultImageableArea: %1\n*DefaultPaperDimension: %1\n").arg(usual);
    constexpr int kWhite = 4;
    for (const QueuePage& page : pages)
        text += QStringLiteral("*ImageableArea %1: \"%2 %2 %3 %4\"\n*PaperDimension %1: \"%5 %6\"\n")
                    .arg(nameOf(page))
                    .arg(kWhite)
                    .arg(pointsOf(page.width) - kWhite)
                    .arg(pointsOf(page.height) - kWhite)
                    .arg(pointsOf(page.width))
                    .arg(pointsOf(page.height));
    return text;
}

} // namespace

PrintService& PrintService::instance() {
    return *theService;
}

PrintService::PrintService() {
    theService = this;
    qputenv("CUPS_SERVER", pathOf(QStringLiteral("socket")).toUtf8());
    writeSettings();
    start();
}

PrintService::~PrintService() {
    if (m_service && m_service->state() != QProcess::NotRunning) {
        m_service->terminate();
        if (!m_service->waitForFinished(kWaitedFor))
            m_service->kill();
        m_service->waitForFinished();
    }
    theService = nullptr;
}

void PrintService::writeSettings() const {
    // Filters run as a user of their own, who must get through to their files.
    QFile::setPermissions(m_folder.path(), QFile::Permissions(0x7011));
    for (const char* folder : {"settings/ppd", "cache", "state", "spool", "temporary", "arrived"})
        QDir().mkpath(pathOf(QLatin1String(folder)));
    for (const char* folder : {"temporary", "arrived"})
        QFile::setPermissions(pathOf(QLatin1String(folder)), QFile::Permissions(0x7777));
    writeFile(pathOf(QStringLiteral("settings/cups-files.conf")),
              QStringLiteral("FileDevice Yes\nServerRoot %1/settings\nCacheDir %1/cache\nStateDir %1/state\n"
                             "RequestRoot %1/spool\nTempDir %1/temporary\nDocumentRoot %1/settings\n"
                             "DataDir /usr/share/cups\nServerBin /usr/lib/cups\n"
                             "AccessLog %1/access\nErrorLog %1/errors\nPageLog %1/pages\nLogFilePerm 0644\n")
                  .arg(m_folder.path()));
    // Whoever reaches the socket may do everything.
    const QString everybody = QStringLiteral("Order allow,deny\nAllow all\n");
    writeFile(pathOf(QStringLiteral("settings/cupsd.conf")),
              QStringLiteral("LogLevel info\nMaxLogSize 0\nListen %1/socket\nBrowsing No\nWebInterface No\n"
                             "DefaultAuthType None\nPreserveJobHistory Yes\n"
                             "<Location />\n%2</Location>\n<Location /admin>\n%2</Location>\n"
                             "<Policy default>\n<Limit All>\n%2</Limit>\n</Policy>\n")
                  .arg(m_folder.path(), everybody));
}

void PrintService::start() {
    // A copy, because a profile of AppArmor for /usr/sbin/cupsd lets that write below /var only.
    const QString program = pathOf(QStringLiteral("print-service"));
    if (!QFile::copy(QStringLiteral("/usr/sbin/cupsd"), program)) {
        m_fault = QStringLiteral("There is no /usr/sbin/cupsd: install Debian's cups, as tests/run.sh does.");
        return;
    }
    m_service = std::make_unique<QProcess>();
    m_service->setProcessChannelMode(QProcess::MergedChannels);
    m_service->start(program, {QStringLiteral("-f"), QStringLiteral("-c"),
                               pathOf(QStringLiteral("settings/cupsd.conf")), QStringLiteral("-s"),
                               pathOf(QStringLiteral("settings/cups-files.conf"))});
    for (QDeadlineTimer deadline(kWaitedFor); !deadline.hasExpired();) {
        if (m_service->waitForFinished(100))
            break;
        if (tool(QStringLiteral("lpstat"), {QStringLiteral("-r")}).contains(QLatin1String("is running")))
            return;
    }
    m_fault = QStringLiteral("cupsd did not start:\n") + QString::fromUtf8(m_service->readAll()) +
              textOf(pathOf(QStringLiteral("errors")));
}

void PrintService::addQueue(const QString& name, const std::vector<QueuePage>& pages) {
    const QString description = pathOf(name + QStringLiteral(".ppd"));
    writeFile(description, descriptionOf(name, pages));
    tool(QStringLiteral("lpadmin"), {QStringLiteral("-p"), name, QStringLiteral("-E"), QStringLiteral("-v"),
                                     QStringLiteral("file://") + pathOf(QStringLiteral("arrived/") + name),
                                     QStringLiteral("-P"), description});
}

void PrintService::removeQueue(const QString& name) {
    tool(QStringLiteral("lpadmin"), {QStringLiteral("-x"), name});
}

QString PrintService::tool(const QString& program, const QStringList& arguments) {
    QProcess process;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QStringLiteral("LC_ALL"), QStringLiteral("C"));
    // The tools that change printers are in folders of the administrator.
    environment.insert(QStringLiteral("PATH"),
                       qEnvironmentVariable("PATH") + QStringLiteral(":/usr/sbin:/sbin"));
    process.setProcessEnvironment(environment);
    process.setProcessChannelMode(QProcess::MergedChannels);
    process.start(QStringLiteral("env"), QStringList{program} + arguments);
    process.waitForFinished(kWaitedFor);
    return QString::fromUtf8(process.readAll());
}

int PrintService::waitingAt(const QString& queue) {
    return static_cast<int>(tool(QStringLiteral("lpstat"), {QStringLiteral("-o"), queue})
                                .split(u'\n', Qt::SkipEmptyParts)
                                .size());
}

QString PrintService::arrivedAt(const QString& queue) {
    const QString file = pathOf(QStringLiteral("arrived/") + queue);
    for (QDeadlineTimer deadline(kWaitedFor); !deadline.hasExpired(); QThread::msleep(50)) {
        if (waitingAt(queue) > 0 || QFileInfo(file).size() == 0)
            continue;
        const QString taken =
            pathOf(QStringLiteral("%1-%2.pdf").arg(queue).arg(QDir(m_folder.path()).count()));
        QFile::rename(file, taken);
        return taken;
    }
    return {};
}

} // namespace holdfast::app::test
