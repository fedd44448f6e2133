#include "app/window/desk_notice.h"

#include <QApplication>
#include <QAudioDevice>
#include <QAudioSink>
#include <QMediaDevices>
#include <QSystemTrayIcon>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rickyard::app {

namespace {

constexpr int kRate = 44100;
constexpr double kLoudest = 0.25; // of full scale
constexpr double kLength = 1.4;   // seconds
constexpr double kSecondTone = 0.22;

// A tone that swells in a hundredth of a second and dies away.
double tone(double seconds, double hertz)
{
    if (seconds < 0)
        return 0;
    const double swell = std::min(1.0, seconds / 0.012);
    return swell * std::exp(-3.4 * seconds) * std::sin(2 * std::numbers::pi * hertz * seconds);
}

} // namespace

QByteArray chimeSamples(int samplesPerSecond)
{
    const int count = static_cast<int>(kLength * samplesPerSecond);
    QByteArray bytes(count * static_cast<int>(sizeof(qint16)), Qt::Uninitialized);
    auto *sample = reinterpret_cast<qint16 *>(bytes.data());
    for (int i = 0; i < count; ++i) {
        const double t = static_cast<double>(i) / samplesPerSecond;
        const double fade = std::min(1.0, (kLength - t) / 0.2);
        const double value = 0.5 * (tone(t, 440.0) + tone(t - kSecondTone, 660.0)) * fade;
        sample[i] = static_cast<qint16>(std::lround(value * kLoudest * 32767.0));
    }
    return bytes;
}

DeskNotice::DeskNotice(QWidget *window) : QObject(window), m_window(window) {}

DeskNotice::~DeskNotice() = default;

void DeskNotice::show(const views::Notice &notice)
{
    m_last = notice.link;
    if (QSystemTrayIcon::isSystemTrayAvailable() && QSystemTrayIcon::supportsMessages()) {
        if (m_tray == nullptr) {
            m_tray = new QSystemTrayIcon(QApplication::windowIcon(), this);
            connect(m_tray, &QSystemTrayIcon::messageClicked, this,
                    [this] { Q_EMIT opened(m_last); });
        }
        m_tray->show();
        m_tray->showMessage(notice.title, notice.text, QApplication::windowIcon());
    }
    QApplication::alert(m_window);
    if (notice.sound)
        ring();
}

void DeskNotice::ring()
{
    QAudioFormat format;
    format.setSampleRate(kRate);
    format.setChannelCount(1);
    format.setSampleFormat(QAudioFormat::Int16);
    const QAudioDevice device = QMediaDevices::defaultAudioOutput();
    if (device.isNull() || !device.isFormatSupported(format)) {
        QApplication::beep();
        return;
    }
    m_samples = chimeSamples(kRate);
    m_sink = std::make_unique<QAudioSink>(device, format);
    m_buffer.close();
    m_buffer.setBuffer(&m_samples);
    m_buffer.open(QIODevice::ReadOnly);
    m_sink->start(&m_buffer);
}

} // namespace rickyard::app
