// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/print_queue.h"

#include "app/desk/formats.h"

#include <QCoreApplication>

#include <cups/cups.h>

#include <array>
#include <functional>
#include <memory>
#include <span>
#include <utility>

namespace holdfast::app {

namespace {

struct QueueWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::PrintQueue)
};

constexpr double kHundredths = 100; // CUPS gives sizes in hundredths of a millimetre

// A print service that wants a password gets none: asking on a terminal would wait for ever.
const char* noPassword(const char*, http_t*, const char*, const char*, void*) {
    return nullptr;
}

using DestinationInfo = std::unique_ptr<cups_dinfo_t, decltype(&cupsFreeDestInfo)>;

DestinationInfo infoOf(cups_dest_t* destination) {
    return {cupsCopyDestInfo(CUPS_HTTP_DEFAULT, destination), &cupsFreeDestInfo};
}

QString optionOf(const cups_dest_t& destination, const char* name) {
    const char* value = cupsGetOption(name, destination.num_options, destination.options);
    return value ? QString::fromUtf8(value) : QString();
}

// What is said of the reasons of RFC 8011, section 5.4.12. What a person did comes before what went wrong.
QString reasonInWords(const QString& reasons) {
    const std::array<std::pair<QLatin1String, QString>, 10> known{{
        {QLatin1String("paused"), QueueWords::tr("is paused")},
        {QLatin1String("offline"), QueueWords::tr("cannot be reached")},
        {QLatin1String("timed-out"), QueueWords::tr("cannot be reached")},
        {QLatin1String("shutdown"), QueueWords::tr("is switched off")},
        {QLatin1String("media-jam"), QueueWords::tr("has a paper jam")},
        {QLatin1String("media-empty"), QueueWords::tr("is out of paper")},
        {QLatin1String("media-needed"), QueueWords::tr("waits for other paper")},
        {QLatin1String("open"), QueueWords::tr("is open")}, // cover-open, door-open
        {QLatin1String("toner-empty"), QueueWords::tr("is out of toner")},
        {QLatin1String("marker-supply-empty"), QueueWords::tr("is out of ink or ribbon")},
    }};
    for (const auto& [reason, said] : known)
        if (reasons.contains(reason))
            return said;
    return {};
}

QString troubleOf(const cups_dest_t& destination) {
    const bool isStopped = optionOf(destination, "printer-state").toInt() == IPP_PSTATE_STOPPED;
    const QString reasons = optionOf(destination, "printer-state-reasons");
    if (!isStopped && !reasons.contains(QLatin1String("-error")) &&
        !reasons.contains(QLatin1String("offline")))
        return {};
    if (const QString said = reasonInWords(reasons); !said.isEmpty())
        return said;
    const QString message = optionOf(destination, "printer-state-message");
    return message.isEmpty() ? QueueWords::tr("has stopped")
                             : QueueWords::tr("has stopped (%1)").arg(message);
}

PrintPage pageOf(const cups_size_t& size) {
    return {QString::fromUtf8(size.media), QSizeF(size.width, size.length) / kHundredths};
}

void readPages(cups_dest_t* destination, PrintQueue& queue) {
    const DestinationInfo info = infoOf(destination);
    if (!info)
        return;
    cups_size_t size{};
    if (cupsGetDestMediaDefault(CUPS_HTTP_DEFAULT, destination, info.get(), CUPS_MEDIA_FLAGS_DEFAULT, &size))
        queue.page = pageOf(size);
    const int count =
        cupsGetDestMediaCount(CUPS_HTTP_DEFAULT, destination, info.get(), CUPS_MEDIA_FLAGS_DEFAULT);
    for (int at = 0; at < count; ++at)
        if (cupsGetDestMediaByIndex(CUPS_HTTP_DEFAULT, destination, info.get(), at, CUPS_MEDIA_FLAGS_DEFAULT,
                                    &size))
            queue.pages.push_back(pageOf(size));
}

PrintQueue queueOf(cups_dest_t* destination) {
    PrintQueue queue;
    queue.name = QString::fromUtf8(destination->name);
    queue.isUsual = destination->is_default != 0;
    queue.takesJobs = optionOf(*destination, "printer-is-accepting-jobs") != QLatin1String("false");
    queue.trouble = troubleOf(*destination);
    readPages(destination, queue);
    return queue;
}

Error refused(const PrintQueue& queue) {
    return plainError(inWindow(QueueWords::tr("The printer %1 did not take it: %2.")
                                   .arg(queue.name, QString::fromUtf8(cupsLastErrorString()))));
}

Result<Done> sendTo(cups_dest_t* destination, const PrintQueue& queue, const PrintPage& page,
                    const QString& title, const QByteArray& pdf) {
    const DestinationInfo info = infoOf(destination);
    if (!info)
        return refused(queue);
    cups_option_t* options = nullptr;
    int count = cupsAddOption("media", page.media.toUtf8().constData(), 0, &options);
    // The pages are of the paper's size already: whatever else a filter would do makes them smaller.
    count = cupsAddOption("print-scaling", "none", count, &options);
    const std::unique_ptr<cups_option_t, std::function<void(cups_option_t*)>> freed(
        options, [count](cups_option_t* all) { cupsFreeOptions(count, all); });
    const QByteArray name = title.toUtf8();
    int job = 0;
    if (cupsCreateDestJob(CUPS_HTTP_DEFAULT, destination, info.get(), &job, name.constData(), count,
                          options) > IPP_STATUS_OK_EVENTS_COMPLETE)
        return refused(queue);
    const bool isSent =
        cupsStartDestDocument(CUPS_HTTP_DEFAULT, destination, info.get(), job, name.constData(),
                              CUPS_FORMAT_PDF, 0, nullptr, 1) == HTTP_STATUS_CONTINUE &&
        cupsWriteRequestData(CUPS_HTTP_DEFAULT, pdf.constData(), static_cast<std::size_t>(pdf.size())) ==
            HTTP_STATUS_CONTINUE &&
        cupsFinishDestDocument(CUPS_HTTP_DEFAULT, destination, info.get()) <= IPP_STATUS_OK_EVENTS_COMPLETE;
    if (isSent)
        return Done{};
    const Error error = refused(queue);
    cupsCancelDestJob(CUPS_HTTP_DEFAULT, destination, job);
    return error;
}

} // namespace

std::vector<PrintQueue> printQueues() {
    cupsSetPasswordCB2(noPassword, nullptr); // for this thread
    cups_dest_t* all = nullptr;
    const int count = cupsGetDests2(CUPS_HTTP_DEFAULT, &all);
    std::vector<PrintQueue> queues;
    for (cups_dest_t& destination : std::span(all, static_cast<std::size_t>(count)))
        if (!destination.instance) // a person's own presets of a printer are no printers
            queues.push_back(queueOf(&destination));
    cupsFreeDests(count, all);
    return queues;
}

Result<Done> sendToQueue(const PrintQueue& queue, const PrintPage& page, const QString& title,
                         const QByteArray& pdf) {
    cupsSetPasswordCB2(noPassword, nullptr);
    cups_dest_t* destination = cupsGetNamedDest(CUPS_HTTP_DEFAULT, queue.name.toUtf8().constData(), nullptr);
    if (!destination)
        return refused(queue);
    auto sent = sendTo(destination, queue, page, title, pdf);
    cupsFreeDests(1, destination);
    return sent;
}

} // namespace holdfast::app
