// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Work beside the window: it runs on a thread of its own, and what it has to say is heard on the interface
// thread, to which everything here belongs but Reporter. All threads of the window are such work (see
// docs/threads.md).
//
// There is one rule for stopping. begin(), drop() and the destructor ask the work under way to stop, wait for
// it, and nothing more is heard of it. So work must ask every few milliseconds whether to stop. stop() does
// not wait: the answer still comes, with what was done by then.

#include <QCoreApplication>
#include <QEvent>
#include <QObject>
#include <QPointer>

#include <atomic>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>
#include <type_traits>
#include <utility>

namespace holdfast::app {

// `News` is what the work reports on its way, usually the share done, from 0 to 1.
template <class Answer, class News = double>
class Beside : private QObject {
public:
    // The window, as the work on its thread sees it.
    class Reporter {
    public:
        bool shouldStop() const { return m_beside.m_shouldStop; }

        // Only the latest news is heard where several come before the window listens, and of shares done one
        // in a hundred: the window has other things to do. False: the work should stop.
        bool report(News news) {
            if constexpr (std::is_same_v<News, double>) {
                if (news - m_reported < kWorthReporting)
                    return !shouldStop();
                m_reported = news;
            }
            m_beside.handOver([&] { m_beside.m_news = std::move(news); });
            return !shouldStop();
        }

    private:
        friend Beside;
        static constexpr double kWorthReporting = 0.01;

        explicit Reporter(Beside& beside)
            : m_beside(beside) {}

        Beside& m_beside;
        double m_reported = 0;
    };

    using Work = std::function<Answer(Reporter&)>; // on its own thread
    using Then = std::function<void(Answer)>;
    using Heard = std::function<void(News)>;

    Beside() = default;
    ~Beside() override { drop(); }

    // `heard` and `then` may begin other work, or delete this.
    void begin(Work work, Then then, Heard heard = {}) {
        drop();
        m_then = std::move(then);
        m_heard = std::move(heard);
        m_shouldStop = false;
        m_thread = std::thread([this, work = std::move(work)] {
            Reporter reporter(*this);
            Answer answer = work(reporter);
            handOver([&] { m_answer = std::move(answer); });
        });
    }

    void stop() { m_shouldStop = true; }

    void drop() {
        m_shouldStop = true;
        if (m_thread.joinable())
            m_thread.join();
        QCoreApplication::removePostedEvents(this);
        m_news.reset();
        m_answer.reset();
        ++m_number;
    }

    bool isUnderWay() const { return m_thread.joinable(); }

private:
    // Whatever crosses does so under a lock of ours, the event that wakes the window as well: the
    // thread sanitizer sees only part of what Qt does to hand over an event.
    template <class Put>
    void handOver(Put put) {
        const std::scoped_lock crossing(m_crossing);
        put();
        QCoreApplication::postEvent(this, new QEvent(QEvent::User));
    }

    bool event(QEvent* event) override {
        std::unique_lock crossing(m_crossing);
        if (event->type() != QEvent::User) {
            crossing.unlock();
            return QObject::event(event);
        }
        std::optional<News> news = std::exchange(m_news, std::nullopt);
        std::optional<Answer> answer = std::exchange(m_answer, std::nullopt);
        crossing.unlock();
        const QPointer<QObject> self(this);
        const int number = m_number;
        if (news && m_heard) {
            const Heard heard = m_heard;
            heard(std::move(*news));
        }
        if (answer && self && number == m_number) {
            m_thread.join();
            const Then then = m_then;
            then(std::move(*answer));
        }
        return true;
    }

    std::thread m_thread;
    std::atomic<bool> m_shouldStop = false;
    Then m_then;
    Heard m_heard;
    int m_number = 0; // of the work whose answer is wanted
    std::mutex m_crossing;
    // Guarded by it:
    std::optional<News> m_news;
    std::optional<Answer> m_answer;
};

} // namespace holdfast::app
