// What happened by itself, said outside the window: the desktop's message, a mark on the window in
// the task bar, and a soft chime. Each is left out where the desktop has no such thing.
#pragma once

#include "views/page.h"

#include <QAudioFormat>
#include <QBuffer>

class QAudioSink;
class QSystemTrayIcon;

namespace rickyard::app {

// Two soft tones a fifth apart that fade: 16 bit, one channel. Starts and ends in silence and never
// clips.
QByteArray chimeSamples(int samplesPerSecond);

class DeskNotice : public QObject
{
    Q_OBJECT

public:
    explicit DeskNotice(QWidget *window);
    ~DeskNotice() override;
    void show(const views::Notice &notice);

Q_SIGNALS:
    // The message was clicked.
    void opened(const rickyard::domain::Link &link);

private:
    void ring();

    QWidget *m_window;
    QSystemTrayIcon *m_tray = nullptr;
    domain::Link m_last;
    std::unique_ptr<QAudioSink> m_sink;
    QByteArray m_samples;
    QBuffer m_buffer;
};

} // namespace rickyard::app
