/* Faults of the system below the program, loaded in front of the C library: a disk that is full from a certain write on,
   and a clock that was set. The control block is a file that all processes map, so that their writes count together. */

#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <sys/time.h>
#include <sys/uio.h>
#include <time.h>
#include <unistd.h>

struct control {
    volatile long count;    /* acts on the disk so far */
    volatile long fail_at;  /* from this one on the disk is full; 0: never */
    volatile long clock_ns; /* by which the clock is wrong */
    volatile long failed;   /* acts refused */
    char under[480];        /* folder that is on this disk */
};

static struct control *control;

#define REAL(name) ((__typeof__(&name))dlsym(RTLD_NEXT, #name))

__attribute__((constructor)) static void begin(void)
{
    const char *path = getenv("STILLSHAFT_FAULTS");
    int file = path ? REAL(open)(path, O_RDWR | O_CLOEXEC) : -1;
    if (file < 0)
        return;
    void *memory = mmap(NULL, sizeof *control, PROT_READ | PROT_WRITE, MAP_SHARED, file, 0);
    close(file);
    control = memory == MAP_FAILED ? NULL : memory;
}

static int within(const char *path)
{
    char whole[4096] = "";
    if (!control || !control->under[0] || !path)
        return 0;
    if (path[0] != '/') {
        if (!getcwd(whole, sizeof whole - 2))
            return 0;
        strcat(whole, "/");
    }
    strncat(whole, path, sizeof whole - strlen(whole) - 1);
    return strncmp(whole, control->under, strlen(control->under)) == 0;
}

static int opened_within(int file)
{
    char link[64], path[4096];
    if (!control || !control->under[0])
        return 0;
    snprintf(link, sizeof link, "/proc/self/fd/%d", file);
    ssize_t length = readlink(link, path, sizeof path - 1);
    if (length <= 0 || path[0] != '/') /* a pipe or a socket */
        return 0;
    path[length] = 0;
    return within(path);
}

/* 0: there is room, 1: none any more, 2: this is the act that fills the disk */
static int full(void)
{
    long number = __sync_add_and_fetch(&control->count, 1);
    if (!control->fail_at || number < control->fail_at)
        return 0;
    __sync_add_and_fetch(&control->failed, 1);
    return number == control->fail_at ? 2 : 1;
}

static int refused(void)
{
    errno = ENOSPC;
    return -1;
}

ssize_t write(int file, const void *data, size_t bytes)
{
    int how = bytes && opened_within(file) ? full() : 0;
    if (how == 2 && bytes > 1) /* a full disk takes a part first, and says nothing */
        return REAL(write)(file, data, bytes / 2);
    return how ? refused() : REAL(write)(file, data, bytes);
}

ssize_t writev(int file, const struct iovec *pieces, int count)
{
    return opened_within(file) && full() ? refused() : REAL(writev)(file, pieces, count);
}

ssize_t pwrite64(int file, const void *data, size_t bytes, off64_t at)
{
    return opened_within(file) && full() ? refused() : REAL(pwrite64)(file, data, bytes, at);
}

ssize_t sendfile64(int to, int from, off64_t *at, size_t bytes)
{
    return opened_within(to) && full() ? refused() : REAL(sendfile64)(to, from, at, bytes);
}

ssize_t sendfile(int to, int from, off_t *at, size_t bytes)
{
    return opened_within(to) && full() ? refused() : REAL(sendfile)(to, from, at, bytes);
}

int fsync(int file)
{
    return opened_within(file) && full() == 2 ? refused() : REAL(fsync)(file);
}

int fdatasync(int file)
{
    return opened_within(file) && full() == 2 ? refused() : REAL(fdatasync)(file);
}

int rename(const char *from, const char *to)
{
    return within(to) && full() == 2 ? refused() : REAL(rename)(from, to);
}

int mkdir(const char *path, mode_t mode)
{
    return within(path) && access(path, F_OK) && full() ? refused() : REAL(mkdir)(path, mode);
}

static int makes(const char *path, int how)
{
    return (how & O_CREAT) && within(path) && access(path, F_OK);
}

#define OPENER(name)                                                                                                   \
    int name(const char *path, int how, ...)                                                                           \
    {                                                                                                                  \
        va_list rest;                                                                                                  \
        va_start(rest, how);                                                                                           \
        mode_t mode = how & (O_CREAT | O_TMPFILE) ? va_arg(rest, mode_t) : 0;                                          \
        va_end(rest);                                                                                                  \
        return makes(path, how) && full() ? refused() : REAL(name)(path, how, mode);                                   \
    }

OPENER(open)
OPENER(open64)

static void set(struct timespec *at)
{
    long whole = at->tv_nsec + control->clock_ns % 1000000000L + 1000000000L;
    at->tv_sec += control->clock_ns / 1000000000L + whole / 1000000000L - 1;
    at->tv_nsec = whole % 1000000000L;
}

int clock_gettime(clockid_t clock, struct timespec *at)
{
    int done = REAL(clock_gettime)(clock, at);
    if (done == 0 && control && control->clock_ns && (clock == CLOCK_REALTIME || clock == CLOCK_REALTIME_COARSE))
        set(at);
    return done;
}

int gettimeofday(struct timeval *restrict at, void *restrict zone)
{
    struct timespec now;
    int done = clock_gettime(CLOCK_REALTIME, &now);
    (void)zone;
    at->tv_sec = now.tv_sec;
    at->tv_usec = now.tv_nsec / 1000;
    return done;
}

time_t time(time_t *at)
{
    struct timespec now;
    clock_gettime(CLOCK_REALTIME, &now);
    if (at)
        *at = now.tv_sec;
    return now.tv_sec;
}
