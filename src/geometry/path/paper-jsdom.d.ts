declare module 'paper-jsdom' {
  import paper from 'paper';
  export default paper;
}
